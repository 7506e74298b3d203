import { rectangleOfBox } from '../geometry/polygon';
import type { Layout, StockSheet, Temperatures } from '../job/schema';
import { toHundredth, type Hundredth } from '../units';
import type { CrackPlaces } from '../survey/crack-places';
import { causesOf } from '../zones/edge-causes';
import type { ZoneArea } from '../zones/zone-area';
import type { CountStockSheets } from './cut-size';
import { changeByHand } from './by-hand/change-by-hand';
import { handFindings } from './by-hand/hand-findings';
import { handOutcomes } from './by-hand/hand-outcomes';
import type { HandWish } from './by-hand/hand-wishes';
import { rulesForJoints } from './by-hand/joint-rules';
import { patternOf } from './grid';
import { jointClearance } from './joint-clearance';
import { inReadingOrder, isAlike, isWholeStock } from './laid-piece';
import {
  isRedivided,
  layFormatInSteps,
  piecesOfPart,
  redivideParts,
  type DividedPart,
  type FormatLayout,
} from './lay-format';
import { layoutFindings } from './layout-findings';
import { keepingLevels, type LineRun } from './line-run';
import { markPanels, type IssuedMark } from './marks';
import { mixFormatsInSteps } from './mix-formats';
import { nearJointFindings } from './near-joint-findings';
import type { NarrowPlace } from './narrow-place';
import { createPace, runSteps, type Pace, type Steps } from './pace';
import type { Panel, ZoneLayout } from './panel';
import type { PanelCost, PanelCosts } from './panel-costs';
import type { JointChange } from './redivide';
import { planFixing } from './plan-fixing';
import { narrowPlace } from './sliver';

export type { CountStockSheets, CutSize } from './cut-size';

export interface LayoutRequest {
  readonly wallId: string;
  readonly area: ZoneArea;
  /** The job's stock; the zone's layout names one of them, or several. */
  readonly stock: readonly StockSheet[];
  readonly countStockSheets: CountStockSheets;
  /** Lost between two panels cut from one stock sheet; 0 if not given. Only the best start asks. */
  readonly kerf?: Hundredth;
  /** Panels of the zone as last issued; they keep their marks where their outline is the same. */
  readonly issued?: readonly IssuedMark[];
  /** Of the steel; without them joints are not checked for its growth. */
  readonly temperatures?: Temperatures | undefined;
  /** Where the wall cracks, as far as the layout's joints keep away from there. */
  readonly cracks?: CrackPlaces | undefined;
  /** What was chosen by hand; nothing if not given. */
  readonly wishes?: readonly HandWish[];
  /** What stock costs: with it, a layout that lists several formats may mix them. */
  readonly costs?: PanelCosts;
  /** Where the zone's lines go on round a corner, or come from one. */
  readonly run?: LineRun | undefined;
}

/** What a panel of the finished layout costs in the measure of `Pace`. */
const workOfPanel = 100;

/**
 * The steel panels of a zone: its area cut by the grid of panel cells that its layout asks for, every connected
 * piece of a cell a panel of its own.
 *
 * @returns panels course by course from the lower left, wall frame, hundredths; an area with nothing in it has
 *   none, and a finding says so. With joint gap 0 the panels of a rectilinear area add up to it exactly; along
 *   sloping and curved edges corners are rounded to 0.01 mm, and what is thinner than that is left out.
 * @throws Error if the zone has no layout, or one that names unknown stock (reading a job lets neither through)
 */
export function layOutZone(request: LayoutRequest): ZoneLayout {
  return runSteps(layOutZoneInSteps(request));
}

/** As `layOutZone`, with pauses a few milliseconds apart, so that the caller may stop or listen. */
export function* layOutZoneInSteps(request: LayoutRequest): Steps<ZoneLayout> {
  const pace = createPace();
  const { wallId, area, issued, wishes = [] } = request;
  const { zone } = area;
  const layout = zone.layout;
  if (!layout) throw new Error(`Zone ${zone.id} of wall ${wallId} has no layout.`);
  const stock = request.stock.find(({ id }) => id === layout.stock);
  if (!stock)
    throw new Error(`Zone ${zone.id} of wall ${wallId} is laid from unknown stock ${layout.stock}.`);

  const leastWidth = toHundredth(layout.leastWidth);
  const divided = yield* divideZone(request, layout, stock, pace);
  const gap = toHundredth(layout.jointGap);
  const changed = changeByHand(divided.parts.map(piecesOfPart), wishes, area.area, gap, request.stock);
  const pieces = changed.parts.flatMap(inReadingOrder);
  const marks = markPanels(
    wallId,
    zone.id,
    pieces.map(({ polygon }) => polygon),
    issued,
  );
  const narrow = new Map<string, NarrowPlace>();
  const panels: Panel[] = [];
  for (const [i, piece] of pieces.entries()) {
    pace.spend(workOfPanel);
    if (pace.isDue()) yield;
    const { polygon, cell, course, byHand } = piece;
    // A whole stock sheet narrower than the least width is the stock's fault, and still no square fits.
    const place = narrowPlace(polygon, leastWidth);
    if (place) narrow.set(marks[i]!, place);
    panels.push({
      mark: marks[i]!,
      stock: piece.stock.id,
      ...(piece.fromStock && { fromStock: true }),
      full: isWholeStock(polygon, piece.stock),
      sliver: place !== null,
      outline: polygon,
      causes: causesOf(polygon, area, byHand ? undefined : rectangleOfBox(cell)),
      cell: { x: cell.left, y: cell.bottom },
      course,
    });
  }
  const { from, changes, mixed } = divided;
  const zoneId = zone.id;
  const { temperatures, stock: known } = request;
  const byHand = handOutcomes({
    wishes,
    layout,
    panels,
    pattern: patternOf(layout, stock),
    refused: changed.refused,
    runsOn: request.run?.start !== undefined,
  });
  const plan = planFixing({ wallId, zoneId, layout, panels, stock: known, temperatures });
  return {
    start: from.divided[0]?.grid.start ?? { x: area.box.left, y: area.box.bottom },
    panels: plan.panels,
    fixing: plan.fixing,
    creep: plan.creep,
    ...(byHand.length > 0 && { byHand }),
    ...(changed.leftOut.length > 0 && {
      leftOut: changed.leftOut.map(({ id, piece }) => ({ id, outline: piece.polygon })),
    }),
    considered: from.considered,
    ...(from.chosen && { chosen: from.chosen }),
    runnersUp: from.runnersUp,
    ...(from.parts && { parts: from.parts }),
    findings: [
      ...layoutFindings({
        wallId,
        area,
        stock,
        panels,
        isLeftOut: changed.leftOut.length > 0,
        narrow,
        capped: from.capped,
        changes,
        ...(mixed && { mixed }),
      }),
      ...nearJointFindings({ wallId, area, panels, clearance: jointClearance(layout, request.cracks) }),
      ...handFindings(wallId, zoneId, byHand),
      ...plan.findings,
    ],
  };
}

interface DividedZone {
  readonly from: FormatLayout;
  readonly parts: readonly DividedPart[];
  readonly changes: readonly JointChange[];
  /** Where formats could be mixed: what they cost, and what the layout's own stock alone would. */
  readonly mixed?: { readonly saved: string | null };
}

/** The zone cut into cells: by one format's grid or by several, and slivers shared out where that is asked. */
function* divideZone(
  { area, stock: known, countStockSheets, kerf, cracks, costs, wishes, run }: LayoutRequest,
  layout: Layout,
  stock: StockSheet,
  pace: Pace,
): Steps<DividedZone> {
  const clearance = jointClearance(layout, cracks);
  const rules = rulesForJoints(clearance, wishes, toHundredth(layout.jointGap));
  const jointRules = run ? { ...rules, allowsJoint: keepingLevels(rules.allowsJoint) } : rules;
  const formats = formatsToMix(layout, stock, known);
  if (costs && formats.length > 1) {
    const mix = yield* mixFormatsInSteps(
      { area, layout, formats, costs, kerf, clearance, wishes, jointRules },
      pace,
    );
    return {
      from: mix.from,
      parts: mix.divided,
      changes: mix.changes,
      mixed: { saved: savedBy(mix, costs) },
    };
  }
  const from = yield* layFormatInSteps(
    { area, layout, stock, countStockSheets, kerf, clearance, wishes, run },
    pace,
  );
  if (!isRedivided(layout) || from.chosen?.slivers === 0) return { from, parts: from.divided, changes: [] };
  const { divided, changes } = yield* redivideParts(from.divided, layout, pace, jointRules);
  return { from, parts: divided, changes };
}

/** The layout's own stock, then the others that it lists, as far as they are of its thickness, coating and face. */
function formatsToMix(
  { stocks = [] }: Layout,
  stock: StockSheet,
  known: readonly StockSheet[],
): StockSheet[] {
  const others = known.filter(
    (other) => other.id !== stock.id && stocks.includes(other.id) && isAlike(other, stock),
  );
  return [stock, ...others];
}

function savedBy({ cost, alone }: { cost: PanelCost; alone: PanelCost }, costs: PanelCosts): string | null {
  return cost.cost < alone.cost ? costs.inWords(alone.cost - cost.cost) : null;
}
