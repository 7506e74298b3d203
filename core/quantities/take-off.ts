import { productsOf } from '../build-up/resolve';
import type { Finding } from '../finding';
import type { Product } from '../job/product-schema';
import type { Job } from '../job/schema';
import type { JobCutting, WorkedWall } from '../worked-out';
import { layerAreaRows, zoneAreaRows, type LayerAreaRow, type ZoneAreaRow } from './areas';
import { materialLines, type MaterialLine } from './material-lines';
import { measuredZones, type MeasuredZone } from './measured-zones';
import { measurementRule } from './measurement-rules';
import { mixingOf, type JobMixingPlan } from './mixing';
import { itemOfProduct, type Need } from './need';
import { settingsOf } from './settings';
import { propNeeds } from './prop-needs';
import { jobSundries } from './sundry-needs';
import { needsOfWalls, type ZoneFilm } from './wall-needs';

/** What a job takes of everything. */
export interface TakeOff {
  /** By wall, zone, layer and coat. */
  readonly needs: readonly Need[];
  /** What is ordered, by group. */
  readonly lines: readonly MaterialLine[];
  /** Minor units of the job's currency: what is known of the cost, and whether that is all. */
  readonly cost: number;
  readonly isWholeCost: boolean;
  readonly zoneAreas: readonly ZoneAreaRow[];
  readonly layerAreas: readonly LayerAreaRow[];
  /** Zones by the job's rule of measurement. */
  readonly offerAreas: readonly MeasuredZone[];
  readonly films: readonly ZoneFilm[];
  readonly mixing: readonly JobMixingPlan[];
  readonly findings: readonly Finding[];
}

/**
 * The take-off of a job: its needs, the packs that cover them and what they cost.
 *
 * Needs are kept for a wall until something that they follow from has changed, packs until their need has: where only a
 * price changes, one choice of packs is made anew.
 *
 * @param walls, cutting as `workOut` gives them
 */
export function takeOff(
  job: Job,
  walls: readonly WorkedWall[],
  cutting: Pick<JobCutting, 'order' | 'sheets'>,
): TakeOff {
  const work = takeOffInSteps(job, walls, cutting);
  for (;;) {
    const { value, done } = work.next();
    if (done) return value;
  }
}

/** The same, yielding at pauses, so that the caller may stop or listen. */
export function* takeOffInSteps(
  job: Job,
  walls: readonly WorkedWall[],
  cutting: Pick<JobCutting, 'order' | 'sheets'>,
): Generator<undefined, TakeOff> {
  const settings = settingsOf(job);
  const own = yield* needsOfWalls(job, walls, settings);
  const ofJob = walls.some(({ zones }) => zones.length > 0)
    ? [...jobSundries({ settings }), ...propNeeds(own, settings)]
    : [];
  const products = productsOf(job);
  const mixing = mixingOf(own, products, settings);
  const lines = materialLines(job, own, ofJob, products, settings.sundries, cutting);
  return {
    needs: [...own.flatMap(({ needs }) => needs), ...ofJob],
    lines,
    cost: lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    isWholeCost: lines.every(({ cost }) => cost !== null),
    zoneAreas: zoneAreaRows(own),
    layerAreas: layerAreaRows(own),
    offerAreas: measuredZones(own, measurementRule(settings.measurement)),
    films: own.flatMap(({ films }) => films),
    mixing: mixing.plans,
    findings: [
      ...saidOnce([...own.flatMap(({ findings }) => findings), ...mixing.findings]),
      ...[...products.values()].flatMap((product) => {
        const line = lines.find(({ item }) => item === itemOfProduct(product.id));
        return line && line.withLoss > 0 ? packFindings(product, line) : [];
      }),
    ],
  };
}

function saidOnce(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter(({ text }) => !seen.has(text) && seen.add(text));
}

function packFindings({ name, packs }: Product, line: MaterialLine): Finding[] {
  if (packs.length === 0) {
    return [
      {
        level: 'note',
        code: 'product-without-packs',
        text: `${name} is not rounded up to packs, because the product has none; enter the sizes that it is sold in.`,
      },
    ];
  }
  if (!line.packs) {
    return [
      {
        level: 'warning',
        code: 'film-longer-than-roll',
        text: `A strip of ${name} is longer than any of its rolls; enter a longer roll, or let the strips run the other way.`,
      },
    ];
  }
  const unpriced = packs.filter(({ price }) => price === 0).length;
  if (unpriced === 0 || unpriced === packs.length) return [];
  return [
    {
      level: 'note',
      code: 'pack-without-price',
      text: `Packs of ${name} are chosen by what they leave over, because ${unpriced} of its ${packs.length} packs has no price; enter it, or take the pack out.`,
    },
  ];
}
