import type { Job } from '../job/schema';
import { findWall } from '../job/shape';
import { growRun, partOfEdge } from '../job/grow-run';
import type { ZoneEdge, ZoneGrowth } from '../job/zone-edges';
import type { Panel } from '../panels/panel';
import { toHundredth, type Mm } from '../units';
import { edgeMoves } from './edge-events';
import { zoneScale, type ZoneFigures, type ZoneScale } from './zone-figures';

/** A size nearby, and what the panels of the wall would then come to. */
export interface ZoneAdvice {
  /** By how much each edge moves outwards, mm; inwards if negative. */
  readonly edges: ZoneGrowth;
  readonly figures: ZoneFigures;
  /** Against the size as it is; cost in the unit of `ZoneFigures.cost`. */
  readonly saves: Savings;
}

export interface Savings {
  readonly stockSheets: number;
  readonly cutPanels: number;
  readonly cost: number;
  /** Steel on the wall given up for it, m²; negative where there is more. */
  readonly area: number;
  /** `12.80 EUR`; null where no money is saved or no stock has a price. */
  readonly money: string | null;
}

export interface ZoneAdvised {
  readonly now: ZoneFigures;
  /** Most stock sheets saved first, then cut panels, then money, then the smallest change. */
  readonly advice: readonly ZoneAdvice[];
  /** How many sizes were laid out. */
  readonly considered: number;
}

export interface AdviceQuestion {
  readonly job: Job;
  readonly wallId: string;
  readonly zoneId: string;
  /** By how much each edge may move, outwards or inwards, mm. */
  readonly margin: Mm;
  /** Those that may move at all. */
  readonly edges: readonly ZoneEdge[];
}

/** Pauses tell how many sizes have been laid out. */
export type AdviceSteps<Result> = Generator<undefined | number, Result, void>;

/** Moves of either direction that are tried together with those of the other. */
const mostTogether = 4;
/** Pieces of advice at most, and sizes for which the cutting plan is asked. */
const mostAdvice = 8;
const mostPlanned = 16;
/** Halvings with which a change is made as small as it may be. */
const halvings = 9;

/**
 * What if the zone grew or shrank by up to so much: sizes nearby at which the wall takes fewer stock sheets, fewer
 * cut panels or less money, and none of these more, nor more slivers.
 *
 * Each edge is moved by itself to where its panels may change for the better (see `edge-events.ts`); then those
 * moves that save most are made smaller as long as they save as much, and moves of upright and level edges are
 * tried together. What is left is counted by the cutting plan.
 *
 * @returns no advice where nothing within the margin saves anything, or the zone has no steel
 */
export function* zoneAdviceInSteps(question: AdviceQuestion): AdviceSteps<ZoneAdvised> {
  const { job, wallId, zoneId } = question;
  const scale = zoneScale(job, wallId, zoneId);
  if (!scale) return { now: nothing, advice: [], considered: 0 };
  const { sizes, look } = sizesOf(scale);
  const now = yield* look({});
  const ups = yield* alongOneDirection(question, scale, look, ['left', 'right']);
  const levels = yield* alongOneDirection(question, scale, look, ['bottom', 'top']);
  for (const x of ups) {
    for (const y of levels) yield* look({ ...x, ...y });
  }
  const promising = [...sizes.values()]
    .filter(({ growth, figures }) => sizeOfChange(growth) > 0 && isNoWorse(figures, now.figures))
    .sort(compareSizes);
  const planned: ZoneAdvice[] = [];
  const nowByPlan = yield* scale.byPlan(now.panels);
  for (const { growth, panels } of spread(undominated(promising), mostPlanned)) {
    const figures = yield* scale.byPlan(panels);
    if (!isNoWorse(figures, nowByPlan)) continue;
    const saves = saved(nowByPlan, figures);
    const money = saves.cost > 0 ? scale.inWords(saves.cost) : null;
    planned.push({ edges: growth, figures, saves: { ...saves, money } });
  }
  const asSizes = planned.map((advice) => ({ ...advice, growth: advice.edges }));
  const advice = spread(undominated(asSizes.sort(compareSizes)), mostAdvice);
  return {
    now: nowByPlan,
    advice: advice.map(({ edges, figures, saves }) => ({ edges, figures, saves })),
    considered: sizes.size,
  };
}

/** The zone at the size that was advised. */
export function applyZoneAdvice(
  job: Job,
  wallId: string,
  zoneId: string,
  { edges }: Pick<ZoneAdvice, 'edges'>,
): Job {
  return growRun(job, wallId, zoneId, edges);
}

interface Size {
  readonly growth: ZoneGrowth;
  readonly figures: ZoneFigures;
}

interface LaidSize extends Size {
  readonly panels: readonly Panel[];
}

type Look = (growth: ZoneGrowth) => AdviceSteps<LaidSize>;

/** Every size that is laid out, each once. */
function sizesOf(scale: ZoneScale): { sizes: ReadonlyMap<string, LaidSize>; look: Look } {
  const sizes = new Map<string, LaidSize>();
  return {
    sizes,
    *look(growth) {
      const moves = Object.entries(growth).filter(([, by]) => by !== 0);
      const key = JSON.stringify(moves.sort(([a], [b]) => (a < b ? -1 : 1)));
      const known = sizes.get(key);
      if (known) return known;
      const panels = yield* scale.panelsAt(growth);
      const size = {
        growth: Object.fromEntries(moves) as ZoneGrowth,
        panels,
        figures: scale.quickly(panels),
      };
      sizes.set(key, size);
      yield sizes.size;
      return size;
    },
  };
}

/** Moves of the two edges of one direction, alone and shared between them, that save most. */
function* alongOneDirection(
  { job, wallId, zoneId, margin, edges }: AdviceQuestion,
  scale: ZoneScale,
  look: Look,
  pair: readonly [ZoneEdge, ZoneEdge],
): AdviceSteps<ZoneGrowth[]> {
  const zone = findWall(job, wallId)!.zones.find(({ id }) => id === zoneId)!;
  const stock = job.stock.find(({ id }) => id === zone.layout!.stock)!;
  const kerf = toHundredth(job.cutting.kerf);
  const free = pair.filter((edge) => edges.includes(edge) && partOfEdge(job, wallId, zoneId, edge));
  const movesOf = (edge: ZoneEdge, by: Mm) => {
    const part = partOfEdge(job, wallId, zoneId, edge)!;
    const { area, usable } = scale;
    return edgeMoves({ area, zone: part.zone, usable, stock, margin: by, kerf }, edge);
  };
  const now = yield* look({});
  const found: Size[] = [];
  for (const edge of free) {
    for (const by of movesOf(edge, margin)) {
      const size = yield* look({ [edge]: by });
      if (isNoWorse(size.figures, now.figures)) found.push(yield* madeSmaller(look, size, edge, by));
    }
  }
  if (free.length === 2) {
    // Twice the margin, taken from both sides alike.
    for (const by of movesOf(pair[1], 2 * margin)) {
      const half = Math.round(by * 50) / 100;
      const other = Math.round((by - half) * 100) / 100;
      if (Math.max(Math.abs(half), Math.abs(other)) > margin) continue;
      const size = yield* look({ [pair[0]]: half, [pair[1]]: other });
      if (isNoWorse(size.figures, now.figures)) found.push(size);
    }
  }
  return undominated(found.sort(compareSizes))
    .slice(0, mostTogether)
    .map(({ growth }) => growth);
}

/** The least move of an edge, by halving, that saves as much; to whole millimetres where it is not at an event. */
function* madeSmaller(look: Look, from: Size, edge: ZoneEdge, by: Mm): AdviceSteps<Size> {
  let [best, enough, little] = [from, by, 0];
  for (let n = 0; n < halvings && Math.abs(enough - little) > 1; n++) {
    const middle = Math.sign(by) * Math.round(Math.abs(enough + little) / 2);
    if (middle === enough || middle === little) break;
    const size = yield* look({ [edge]: middle });
    if (isNoWorse(size.figures, from.figures, true)) [best, enough] = [size, middle];
    else little = middle;
  }
  return best;
}

/** In none of its figures worse, and in some better, unless as good is enough. */
function isNoWorse(a: ZoneFigures, b: ZoneFigures, asGoodWillDo = false): boolean {
  const { stockSheets, cutPanels, cost } = saved(b, a);
  return (
    a.slivers <= b.slivers &&
    stockSheets >= 0 &&
    cost >= 0 &&
    (stockSheets > 0 || cost > 0 || cutPanels >= 0) &&
    (asGoodWillDo ? cutPanels >= 0 : stockSheets > 0 || cutPanels > 0 || cost > 0)
  );
}

function saved(now: ZoneFigures, then: ZoneFigures): Omit<Savings, 'money'> {
  return {
    stockSheets: now.stockSheets - then.stockSheets,
    cutPanels: now.cutPanels - then.cutPanels,
    cost: now.cost - then.cost,
    area: now.area - then.area,
  };
}

function compareSizes(a: Size, b: Size): number {
  return (
    a.figures.stockSheets - b.figures.stockSheets ||
    a.figures.cutPanels - b.figures.cutPanels ||
    a.figures.cost - b.figures.cost ||
    sizeOfChange(a.growth) - sizeOfChange(b.growth)
  );
}

/** Those of which no other saves as much with as small a change; best first, as they come. */
function undominated<One extends Size>(sizes: readonly One[]): One[] {
  return sizes.filter(
    (one, i) =>
      !sizes.some(
        (other, j) =>
          j !== i &&
          other.figures.stockSheets <= one.figures.stockSheets &&
          other.figures.cutPanels <= one.figures.cutPanels &&
          other.figures.cost <= one.figures.cost &&
          (sizeOfChange(other.growth) < sizeOfChange(one.growth) ||
            (sizeOfChange(other.growth) === sizeOfChange(one.growth) && j < i)),
      ),
  );
}

/** For every number of stock sheets the best size and the one nearest to the zone as it is, in the order given. */
function spread<One extends Size>(sizes: readonly One[], most: number): One[] {
  const levels = new Map<number, One[]>();
  for (const size of sizes) {
    const level = levels.get(size.figures.stockSheets) ?? [];
    levels.set(size.figures.stockSheets, [...level, size]);
  }
  const kept = new Set<One>();
  for (const level of levels.values()) {
    kept.add(level[0]!);
    kept.add(
      level.reduce((near, one) => (sizeOfChange(one.growth) < sizeOfChange(near.growth) ? one : near)),
    );
  }
  return sizes.filter((size) => kept.has(size)).slice(0, most);
}

function sizeOfChange(growth: ZoneGrowth): Mm {
  return Object.values(growth).reduce((sum, by) => sum + Math.abs(by), 0);
}

const nothing: ZoneFigures = { slivers: 0, stockSheets: 0, cutPanels: 0, panels: 0, area: 0, cost: 0 };
