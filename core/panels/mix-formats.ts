import type { Point } from '../geometry/polygon';
import type { Layout, StockSheet } from '../job/schema';
import { toHundredth, type Hundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import type { HandWish } from './by-hand/hand-wishes';
import { chooseWaysInSteps, compareQuick, type ChosenWays, type Preference } from './choose-ways';
import { patternOf } from './grid';
import type { JointClearance } from './joint-clearance';
import { isWholeStock } from './laid-piece';
import {
  cellsOf,
  isRedivided,
  layFormatInSteps,
  piecesOfPart,
  redivideParts,
  type DividedPart,
  type FormatLayout,
} from './lay-format';
import type { Pace, Steps } from './pace';
import type { PanelCost, PanelCosts } from './panel-costs';
import { quickFigures, weighPiece } from './quick-cost';
import type { JointChange, JointRules } from './redivide';
import { slottedWays } from './rim-strips';
import { startPoint, type FixedStart } from './start-point';

export interface MixQuestion {
  readonly area: ZoneArea;
  readonly layout: Layout;
  /** The layout's own stock first, then the others that it lists; all of a kind. */
  readonly formats: readonly StockSheet[];
  readonly costs: PanelCosts;
  readonly kerf?: Hundredth | undefined;
  readonly jointRules?: JointRules | undefined;
  readonly clearance?: JointClearance | undefined;
  readonly wishes?: readonly HandWish[] | undefined;
}

export interface MixedLayout {
  /** The starts, and how they were found. */
  readonly from: FormatLayout;
  readonly divided: readonly DividedPart[];
  readonly changes: readonly JointChange[];
  readonly cost: PanelCost;
  /** What the layout's own stock alone would cost. */
  readonly alone: PanelCost;
}

interface Candidate {
  readonly from: FormatLayout;
  readonly divided: readonly DividedPart[];
  readonly changes: readonly JointChange[];
}

/**
 * A zone laid from the formats that cost least together: whole sheets of one in the body, the others in the strips
 * along its edges and in cells that an opening cuts, on joints that the first one's go on in.
 *
 * Never dearer, by the cutting plan that `costs` asks for, than any of the formats alone; among what costs no more
 * than the cheapest of those: fewest slivers, then least cost, then fewest cut panels.
 */
export function* mixFormatsInSteps(question: MixQuestion, pace: Pace): Steps<MixedLayout> {
  const { area, layout, formats, costs, kerf, clearance, wishes } = question;
  const singles: FormatLayout[] = [];
  for (const stock of formats) {
    const countStockSheets = costs.countOf(stock.id);
    singles.push(
      yield* layFormatInSteps({ area, layout, stock, countStockSheets, kerf, clearance, wishes }, pace),
    );
  }
  const mixes: (ChosenWays & { from: FormatLayout })[] = [];
  const sources = singles.flatMap((single) => startsToMix(single, question));
  for (const from of sources) {
    mixes.push(...(yield* mixesOf(from, question, Math.floor(mostCosted / sources.length))));
  }

  const alone: Weighed[] = [];
  for (const from of singles) {
    alone.push(yield* weighed({ from, divided: from.divided }, question, pace));
  }
  const dearest = Math.min(...alone.map(({ cost }) => cost.cost));
  const finalists: Weighed[] = [...alone];
  for (const mix of leading(mixes)) {
    finalists.push(yield* weighed(mix, question, pace));
  }
  const allowed = finalists.filter(({ cost }) => cost.cost <= dearest);
  const chosen = allowed.reduce((best, one) => (compareWeighed(one, best) < 0 ? one : best));
  return { ...chosen, alone: alone[0]!.cost };
}

/** Layouts costed by the quick count, in all; and those that the cutter is asked about besides single formats. */
const mostCosted = 2400;
const mostPlanned = 6;

interface Weighed extends Candidate {
  readonly cost: PanelCost;
  readonly slivers: number;
  readonly cut: number;
}

function compareWeighed(a: Weighed, b: Weighed): number {
  return a.slivers - b.slivers || a.cost.cost - b.cost.cost || a.cut - b.cut;
}

/** A candidate with its slivers shared out, if asked, and what the cutter says of it. */
function* weighed(
  { from, divided }: Omit<Candidate, 'changes'>,
  { layout, costs, jointRules }: MixQuestion,
  pace: Pace,
): Steps<Weighed> {
  const redivided = isRedivided(layout)
    ? yield* redivideParts(divided, layout, pace, jointRules)
    : { divided, changes: [] };
  const leastWidth = toHundredth(layout.leastWidth);
  const pieces = redivided.divided.flatMap(piecesOfPart);
  const { slivers } = quickFigures(
    pieces.map((piece) => weighPiece(piece, leastWidth)),
    costs,
  );
  const panels = pieces.map(({ polygon, stock }) => ({ outline: polygon, stock: stock.id }));
  const cost = yield* costs.planCost(panels);
  const cut = pieces.filter(({ polygon, stock }) => !isWholeStock(polygon, stock)).length;
  return { from, ...redivided, cost, slivers, cut };
}

/** A format alone from its best start, and from others that leave whole sheets on two of the zone's edges. */
function startsToMix(single: FormatLayout, { area, layout }: MixQuestion): FormatLayout[] {
  // Corners would not keep to what was chosen by hand.
  if (layout.start !== 'best' || single.parts || single.chosen?.unmet !== undefined) return [single];
  const pattern = patternOf(layout, single.stock);
  const corners: FixedStart[] = ['lower-left', 'upper-left', 'lower-right', 'centre-on-panel'];
  const starts: Point[] = [
    ...single.runnersUp.slice(0, 1).map(({ start }) => start),
    ...corners.map((start) => startPoint(start, area.box, pattern)),
  ];
  const others = starts.map((start): FormatLayout => {
    const grid = { ...pattern, start };
    const cells = cellsOf(area.area, grid, single.stock);
    const { stock, considered, capped } = single;
    return {
      stock,
      divided: [{ area: area.area, grid, cells, isPlain: true }],
      considered,
      capped,
      runnersUp: [],
    };
  });
  return [single, ...others];
}

function* mixesOf(
  from: FormatLayout,
  { layout, formats, costs }: MixQuestion,
  budget: number,
): Steps<(ChosenWays & { from: FormatLayout })[]> {
  const gap = toHundredth(layout.jointGap);
  const leastWidth = toHundredth(layout.leastWidth);
  const ways = from.divided.map((part) => slottedWays(part, { layout, fillers: formats, gap }));
  yield;
  const found: (ChosenWays & { from: FormatLayout })[] = [];
  const variants = Math.max(...ways.map((of) => of.length));
  for (let variant = 0; variant < variants; variant++) {
    // A part that has one way less keeps its last.
    const slotted = ways.flatMap((of) => of[Math.min(variant, of.length - 1)] ?? []);
    if (!slotted.some(({ slots }) => slots.length > 0)) continue;
    const preferences: Preference[] = ['no-slivers', 'least-cost'];
    for (const preference of preferences) {
      const choosing = { costs, leastWidth, preference, budget: Math.floor(budget / (2 * variants)) };
      const mix = yield* chooseWaysInSteps(slotted, formats, choosing);
      found.push({ ...mix, from });
      // Without slivers the second way of comparing finds nothing else.
      if (mix.figures.slivers === 0) break;
    }
  }
  return found;
}

/** The most promising mixes by the quick count, for either way of comparing, no two with the same figures. */
function leading<Mix extends ChosenWays>(mixes: readonly Mix[]): Mix[] {
  const distinct = mixes.filter(
    ({ figures }, i) =>
      mixes.findIndex((other) => JSON.stringify(other.figures) === JSON.stringify(figures)) === i,
  );
  const first = (preference: Preference) =>
    [...distinct].sort((a, b) => compareQuick(a.figures, b.figures, preference)).slice(0, mostPlanned / 2);
  return [...new Set([...first('no-slivers'), ...first('least-cost')])];
}
