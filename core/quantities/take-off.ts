import { productsOf } from '../build-up/resolve';
import type { Finding } from '../finding';
import type { Product } from '../job/product-schema';
import type { Job } from '../job/schema';
import type { JobCutting, WorkedWall } from '../worked-out';
import { layerAreaRows, zoneAreaRows, type LayerAreaRow, type ZoneAreaRow } from './areas';
import { materialLines, type MaterialLine } from './material-lines';
import { itemOfProduct, type Need } from './need';
import { settingsOf } from './settings';
import { jobSundries } from './sundry-needs';
import { needsOfWalls, type WallNeeds } from './wall-needs';

/** What a job takes of everything. */
export interface TakeOff {
  /** By wall, zone, layer and coat. */
  readonly needs: readonly Need[];
  /** What is ordered, by group. */
  readonly lines: readonly MaterialLine[];
  /** Minor units of the job's currency: what is known of the cost, and whether that is all. */
  readonly cost: number;
  readonly isWholeCost: boolean;
  readonly walls: readonly WallNeeds[];
  readonly zoneAreas: readonly ZoneAreaRow[];
  readonly layerAreas: readonly LayerAreaRow[];
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
  const settings = settingsOf(job);
  const own = needsOfWalls(job, walls, settings);
  const ofWalls = own.flatMap(({ needs }) => needs);
  const needs = walls.some(({ zones }) => zones.length > 0)
    ? [...ofWalls, ...jobSundries({ settings })]
    : ofWalls;
  const products = productsOf(job);
  const lines = materialLines(job, needs, products, settings.sundries, cutting);
  return {
    needs,
    lines,
    cost: lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    isWholeCost: lines.every(({ cost }) => cost !== null),
    walls: own,
    zoneAreas: zoneAreaRows(own),
    layerAreas: layerAreaRows(own),
    findings: [
      ...saidOnce(own.flatMap(({ findings }) => findings)),
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
