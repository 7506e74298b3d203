import type { Region } from '../geometry/polygon';
import type { Layout, StockSheet } from '../job/schema';
import { toHundredth, type Hundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import { searchBestStartInSteps } from './best-start';
import type { HandWish } from './by-hand/hand-wishes';
import { startRules } from './by-hand/start-rules';
import type { CountStockSheets } from './cut-size';
import { patternOf, type Grid } from './grid';
import type { JointCell } from './joint-cells';
import type { JointClearance } from './joint-clearance';
import type { LaidPiece } from './laid-piece';
import { nearJointsOfAreas } from './near-joints';
import type { Pace, Steps } from './pace';
import type { StartCandidate, StartedPart } from './panel';
import { searchPartStartsInSteps } from './part-starts';
import { cellsOfGrid } from './pieces-of-grid';
import { redivideInSteps, type JointChange, type JointRules } from './redivide';
import { withParts, type LineRun } from './line-run';
import { isSliver } from './sliver';
import type { StartQuestion } from './start-figures';
import { startPoint } from './start-point';

/** Cells that were divided by one grid, or by several beside each other, and the area that they divide. */
export interface DividedPart {
  readonly area: Region;
  readonly grid: Grid;
  readonly cells: readonly JointCell[];
  /** One grid alone: its empty cells are among them. */
  readonly isPlain: boolean;
}

/** A zone laid from one stock sheet: which start each part has, and the cells that its grid makes. */
export interface FormatLayout {
  readonly stock: StockSheet;
  readonly divided: readonly DividedPart[];
  readonly considered: number;
  readonly capped: boolean;
  readonly chosen?: StartCandidate;
  readonly runnersUp: readonly StartCandidate[];
  readonly parts?: readonly StartedPart[];
}

export interface FormatQuestion {
  readonly area: ZoneArea;
  readonly layout: Layout;
  readonly stock: StockSheet;
  readonly countStockSheets: CountStockSheets;
  readonly kerf?: Hundredth | undefined;
  /** How far joints keep away from where the wall cracks; nowhere if not given. */
  readonly clearance?: JointClearance | undefined;
  readonly run?: LineRun | undefined;
  /** What was chosen by hand; nothing if not given. */
  readonly wishes?: readonly HandWish[] | undefined;
}

/** Lays a zone from one stock sheet, from the start that its layout asks for. */
export function* layFormatInSteps(question: FormatQuestion, pace: Pace): Steps<FormatLayout> {
  const { area, layout, stock, run } = question;
  const pattern = patternOf(layout, stock);
  const divide = (part: Region, grid: Grid): DividedPart => ({
    area: part,
    grid,
    cells: cellsOf(part, grid, stock),
    isPlain: true,
  });
  if (run?.start) {
    const grid = { ...pattern, start: run.start };
    return { stock, divided: [divide(area.area, grid)], considered: 1, capped: false, runnersUp: [] };
  }
  if (layout.start !== 'best') {
    const grid = { ...pattern, start: startPoint(layout.start, area.box, pattern) };
    return { stock, divided: [divide(area.area, grid)], considered: 1, capped: false, runnersUp: [] };
  }
  const search = startQuestionOf(question);
  if (layout.startEachPart && !run && area.area.length > 1) {
    const { parts, considered, capped, chosen, common } = yield* searchPartStartsInSteps(search, pace);
    const divided = area.area.map((part, i) => divide([part], { ...pattern, start: parts[i]!.start }));
    return { stock, divided, considered, capped, chosen, runnersUp: common, parts };
  }
  const { best, runnersUp, considered, capped } = yield* searchBestStartInSteps(search, pace);
  const divided = [divide(area.area, { ...pattern, start: best.start })];
  return { stock, divided, considered, capped, chosen: best, runnersUp };
}

/** What the search for the best start is about. */
export function startQuestionOf(question: FormatQuestion): StartQuestion {
  const { area, layout, stock, countStockSheets, kerf, clearance, wishes = [], run } = question;
  const pattern = patternOf(layout, stock);
  return {
    area: run ? withParts(area, run.parts, pattern) : area,
    pattern,
    leastWidth: toHundredth(layout.leastWidth),
    countStockSheets,
    kerf,
    nearJoints: clearance && nearJointsOfAreas(pattern, clearance),
    rules: startRules(pattern, wishes),
  };
}

/** The cells of a grid, empty ones with them; their slivers are not counted yet. */
export function cellsOf(area: Region, grid: Grid, stock: StockSheet): JointCell[] {
  return cellsOfGrid(area, grid).map(({ cell, course, pieces }) => ({
    box: cell,
    course,
    stock,
    pieces,
    slivers: 0,
  }));
}

/** Whether slivers of a zone are joined or shared out with their neighbours. */
export function isRedivided({ redivide, start }: Layout): boolean {
  return redivide ?? start === 'best';
}

/** In the measure of `Pace`. */
const workOfSliverCount = 20;

/** Parts with their slivers joined or shared out, and what was done. */
export function* redivideParts(
  divided: readonly DividedPart[],
  layout: Layout,
  pace: Pace,
  { allowsJoint, isHeld }: JointRules = {},
): Steps<{ readonly divided: readonly DividedPart[]; readonly changes: readonly JointChange[] }> {
  const changes: JointChange[] = [];
  const after: DividedPart[] = [];
  const leastWidth = toHundredth(layout.leastWidth);
  for (const part of divided) {
    const cells: JointCell[] = [];
    for (const cell of part.cells) {
      pace.spend(workOfSliverCount * cell.pieces.length);
      if (pace.isDue()) yield;
      const slivers = cell.pieces.filter((piece) => isSliver(piece, leastWidth)).length;
      cells.push(slivers === cell.slivers ? cell : { ...cell, slivers });
    }
    const gap = toHundredth(layout.jointGap);
    const question = {
      area: part.area,
      cells,
      withEmpty: part.isPlain,
      gap,
      leastWidth,
      allowsJoint,
      isHeld,
    };
    const result = yield* redivideInSteps(question, pace);
    after.push({ ...part, cells: result.cells });
    changes.push(...result.changes);
  }
  return { divided: after, changes };
}

export function piecesOfPart({ cells }: DividedPart): LaidPiece[] {
  return cells.flatMap(({ box, course, stock, pieces }) =>
    pieces.map((polygon) => ({ polygon, cell: box, course, stock })),
  );
}
