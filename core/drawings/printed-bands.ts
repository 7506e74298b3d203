import { union } from '../geometry/clip';
import type { Region } from '../geometry/polygon';
import type { MapBand } from '../holding/holding-map';
import { bandPlace, hookWords, knownBy, weightDown } from '../holding/map-words';
import { buildUpKind } from '../job/build-up-kinds';
import type { Wall } from '../job/schema';
import type { LengthUnits } from '../lengths';
import { hatch, type HatchStyle } from './hatch';
import type { PaperPoint, Stroke } from './page';

/** Bands of a holding map whose figures read alike on paper. */
export interface PrintedBand extends Pick<MapBand, 'verdict' | 'isNearEdge' | 'isOverPeople'> {
  /** From 1, those that hold most first. */
  readonly number: number;
  /** Wall frame, hundredths; disjoint. */
  readonly region: Region;
  /** What may hang on one hook: `100 g`, `100 g if tested`, `not known`, `nothing`. */
  readonly words: string;
  /** `17,9 N`, never rounded up; empty where no pull is known. */
  readonly pull: string;
  readonly leastPull: string;
  readonly ifTested: string;
  /** How many times over it has to hold; 0 where that is not asked. */
  readonly asked: number;
  /** `near an edge, over people` */
  readonly place: string;
  /** `calculation`; that a coating was not tested. */
  readonly known: string;
  readonly zones: readonly string[];
  readonly panels: readonly string[];
  readonly reasons: readonly string[];
}

export function printedBands(
  bands: readonly MapBand[],
  wall: Pick<Wall, 'zones'>,
  units?: LengthUnits,
): PrintedBand[] {
  const coated = new Set(
    wall.zones.filter(({ buildUp }) => buildUpKind(buildUp).magnetic === 'coating').map(({ id }) => id),
  );
  const alike = new Map<string, PrintedBand>();
  for (const band of bands) {
    const { verdict, isOverPeople } = band;
    // Where nothing may hang over people, edges make no difference.
    const isBarred = isOverPeople && verdict === 'does not hold';
    const said = {
      ...{ verdict, isOverPeople, isNearEdge: band.isNearEdge && !isBarred },
      words: hookWords(band, units),
      pull: isBarred ? '' : forceDown(band.pull),
      leastPull: isBarred ? '' : forceDown(band.leastPull),
      ifTested: band.ifTested > 0 ? comma(weightDown(band.ifTested, units)) : '',
      asked: band.asked,
      place: isBarred ? 'over people' : bandPlace(band),
      known: isBarred ? '' : knownInWords(band, coated),
    };
    const key = JSON.stringify(said);
    const known = alike.get(key);
    alike.set(key, {
      ...said,
      words: comma(said.words),
      number: known?.number ?? alike.size + 1,
      region: isBarred ? union(known?.region ?? [], band.region) : [...(known?.region ?? []), ...band.region],
      zones: merged(known?.zones, band.zones),
      panels: merged(known?.panels, band.panels),
      reasons: merged(known?.reasons, band.reasons),
    });
  }
  return [...alike.values()];
}

const untested = 'coating, no test yet';

/** What stands beneath the words in a band: `17,9 N (1)`, `people below (3)`, `coating, no test yet (2)`. */
export function beneathWords({ number, verdict, pull, known, isOverPeople }: PrintedBand): string {
  const isBarred = isOverPeople && verdict === 'does not hold';
  const said = isBarred ? 'people below' : pull || (known === untested ? known : '');
  return `${said.replace(/(?<=\d) (?=N$)/, '\u00A0')}\u00A0(${number})`.trim();
}

function knownInWords({ by, verdict, zones }: MapBand, coated: ReadonlySet<string>): string {
  const isUntested = by === 'nothing' && verdict !== 'does not hold' && zones.every((id) => coated.has(id));
  return isUntested ? untested : knownBy[by];
}

/** Newtons to a tenth. */
function forceDown(force: number): string {
  return force > 0 ? `${comma((Math.floor(force * 10 + 1e-9) / 10).toFixed(1))} N` : '';
}

/** With the comma of the drawing practice. */
function comma(text: string): string {
  return text.replace(/(?<=\d)\.(?=\d)/g, ',');
}

function merged(known: readonly string[] = [], more: readonly string[]): readonly string[] {
  return [...new Set([...known, ...more])];
}

/*
 * Hatching tells bands apart on a print in black: rising lines where it holds, falling broken ones where only a test allows
 * it, level chain lines where nothing can be said; half as many near an edge, none where nothing holds.
 */
export function bandHatch(
  { verdict, isNearEdge }: Pick<PrintedBand, 'verdict' | 'isNearEdge'>,
  rings: readonly (readonly PaperPoint[])[],
): Stroke[] {
  const style = (angle: number, spacing: number): HatchStyle => ({
    angle,
    spacing: isNearEdge ? 2 * spacing : spacing,
    width: 0.18,
    colour: 'ink',
  });
  switch (verdict) {
    case 'holds':
      return hatch(rings, style(45, 2));
    case 'holds only if tested':
      return hatch(rings, style(135, 2)).map((stroke) => ({ ...stroke, line: 'dashed' }));
    case 'cannot be judged':
      return hatch(rings, style(0, 3)).map((stroke) => ({ ...stroke, line: 'long-dashed-double-dotted' }));
    case 'does not hold':
      return [];
  }
}
