import { filmLayers, finishLayers, magneticLayers } from '../build-up/layer-kinds';
import type { WorkedBuildUp } from '../build-up/worked-build-up';
import type { PullTestRecord } from '../job/magnet-schema';
import { nameOfZone } from '../job/names';
import type { Job, StockSheet } from '../job/schema';
import { steelOf } from '../job/steel-kind';
import type { ZoneLayout } from '../panels/panel';
import type { ZoneArea } from '../zones/zone-area';
import type { Surface } from './friction';
import type { HoldingGround, PullTest, SteelGround, UnknownGround } from './ground';
import type { Magnet } from './magnet';
import { thicknessTolerance, type SheetOrder } from './sheet-tolerance';
import type { Mm } from '../units';

/** A zone as the stages before have worked it out. */
export interface HoldingZone {
  readonly area: ZoneArea;
  readonly layout: ZoneLayout | null;
  readonly buildUp: WorkedBuildUp;
}

/**
 * What lies behind a magnet on a zone: kind and thickness of the steel by its stock sheet, the gap by the zone's layers over
 * the ground as it was surveyed, and what was measured there.
 *
 * @param magnets of the job, by id
 * @param stocks ids of the stock sheets that the steel may be cut from; absent: the one that is laid
 */
export function groundOfZone(
  job: Job,
  { area: { zone }, layout, buildUp }: HoldingZone,
  magnets: ReadonlyMap<string, Magnet>,
  stocks: readonly (string | undefined)[] = [zone.layout?.stock],
): HoldingGround {
  const { layers } = buildUp.resolved;
  const magnetic = layers.findLast(({ layer }) => magneticLayers.includes(layer.kind));
  if (!magnetic) return { kind: 'none' };
  const surface = surfaceOfLayers(layers.map(({ layer }) => layer.kind));
  const tests = (zone.pullTests ?? []).flatMap((test) => pullTestOf(test, magnets));
  if (magnetic.layer.kind !== 'steel') return { kind: 'coating', surface, tests };

  const { gap } = buildUp.figures;
  const name = nameOfZone(zone);
  const sheets = job.stock.filter(({ id }) => stocks.includes(id));
  if (!layout || sheets.length === 0)
    return { kind: 'unknown', why: `The panels of ${name} are not laid out yet.` };
  const steel = steelOfSheets(sheets, name);
  if ('why' in steel) return steel;
  if (!gap || gap.nominal.value === null)
    return {
      kind: 'unknown',
      why: `The gap over the steel of ${name} is not known, as ${gap?.nominal.unknown}.`,
    };
  return {
    kind: 'steel',
    ...steel,
    gap: gap.nominal.value,
    ...(gap.least.value === null ? {} : { gapLeast: gap.least.value }),
    ...(gap.greatest.value === null ? {} : { gapMost: gap.greatest.value }),
    surface,
    tests,
  };
}

/** What the gap is not known to be at most, as a reservation; undefined where it is. */
export function gapReservation({ area: { zone }, buildUp }: HoldingZone): string | undefined {
  const greatest = buildUp.figures.gap?.greatest;
  if (!greatest || greatest.value !== null) return undefined;
  return `How far the gap of ${nameOfZone(zone)} may be larger is not known, as ${greatest.unknown}; 0.2 mm are taken.`;
}

/** Writing and chalk leave dust behind; a film is written on as a coat is. */
function surfaceOfLayers(kinds: readonly (typeof finishLayers)[number][]): Surface {
  const finish = kinds.findLast((kind) => finishLayers.includes(kind));
  if (finish === 'chalk') return 'chalk';
  if (finish === undefined || finish === 'decorative') return 'plain';
  return filmLayers.includes(finish) || finish === 'writable' || finish === 'clear-writable'
    ? 'writable'
    : 'plain';
}

/** A test with a magnet that the job no longer has says nothing. */
function pullTestOf(
  { magnet: id, between, readings }: PullTestRecord,
  magnets: ReadonlyMap<string, Magnet>,
): PullTest[] {
  const magnet = magnets.get(id);
  return magnet ? [{ magnet, between, readings }] : [];
}

/** Which of several sheets a panel is cut from is not known here: the thinnest counts, and two kinds of steel are none. */
function steelOfSheets(
  sheets: readonly StockSheet[],
  name: string,
): Pick<SteelGround, 'steel' | 'thickness' | 'order'> | UnknownGround {
  const bare = sheets.find(({ thickness }) => thickness === undefined);
  if (bare) return { kind: 'unknown', why: `Stock sheet ${bare.id} has no thickness: enter it at Panels.` };
  const thinnest = sheets.reduce((a, b) => (leastOf(b) < leastOf(a) ? b : a));
  if (sheets.some((sheet) => steelOf(sheet) !== steelOf(thinnest)))
    return {
      kind: 'unknown',
      why: `Cut panels of ${name} may be of different steel (${sheets.map(({ id }) => id).join(', ')}): take all but one out of its layout.`,
    };
  return { steel: steelOf(thinnest), thickness: thinnest.thickness!, ...orderOf(thinnest) };
}

/** mm, at the bad end of its tolerance. */
function leastOf(sheet: StockSheet): Mm {
  return sheet.thickness! - thicknessTolerance(sheet.thickness!, orderOf(sheet).order).by;
}

function orderOf({ thicknessOrder, width, height }: StockSheet): { readonly order?: SheetOrder } {
  if (!thicknessOrder) return {};
  const { standard, tolerance, yieldStrength } = thicknessOrder;
  // Sheets are cut from a coil across their shorter side, or along it: the wider tolerance counts.
  return {
    order: {
      standard,
      tolerance,
      width: Math.max(width, height),
      ...(yieldStrength !== undefined && { yieldStrength }),
    },
  };
}
