import { rectangleOfBox, type Point } from '../geometry/polygon';
import type { StockSheet } from '../job/schema';
import { toHundredth, type Hundredth } from '../units';
import { causesOf } from '../zones/edge-causes';
import type { ZoneArea } from '../zones/zone-area';
import { searchBestStartInSteps } from './best-start';
import type { CountStockSheets } from './cut-size';
import { patternOf } from './grid';
import { layoutFindings } from './layout-findings';
import { markPanels, type IssuedMark } from './marks';
import type { NarrowPlace } from './narrow-place';
import { createPace, runSteps, type Steps } from './pace';
import type { Panel, ZoneLayout } from './panel';
import { isWholeCell, piecesOfGrid } from './pieces-of-grid';
import { narrowPlace } from './sliver';
import { startPoint } from './start-point';

export type { CountStockSheets, CutSize } from './cut-size';

export interface LayoutRequest {
  readonly wallId: string;
  readonly area: ZoneArea;
  /** The job's stock; the zone's layout names one of them. */
  readonly stock: readonly StockSheet[];
  readonly countStockSheets: CountStockSheets;
  /** Lost between two panels cut from one stock sheet; 0 if not given. Only the best start asks. */
  readonly kerf?: Hundredth;
  /** Panels of the zone as last issued; they keep their marks where their outline is the same. */
  readonly issued?: readonly IssuedMark[];
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
  const { wallId, area, countStockSheets, kerf, issued } = request;
  const { zone } = area;
  const layout = zone.layout;
  if (!layout) throw new Error(`Zone ${zone.id} of wall ${wallId} has no layout.`);
  const stock = request.stock.find(({ id }) => id === layout.stock);
  if (!stock)
    throw new Error(`Zone ${zone.id} of wall ${wallId} is laid from unknown stock ${layout.stock}.`);

  const pattern = patternOf(layout, stock);
  const leastWidth = toHundredth(layout.leastWidth);
  const found =
    layout.start === 'best'
      ? yield* searchBestStartInSteps({ area, pattern, leastWidth, countStockSheets, kerf }, pace)
      : undefined;
  const start: Point =
    found?.best.start ?? startPoint(layout.start === 'best' ? 'lower-left' : layout.start, area.box, pattern);

  const pieces = piecesOfGrid(area.area, { ...pattern, start });
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
    const { polygon, cell, course } = piece;
    const full = isWholeCell(piece);
    // A whole stock sheet narrower than the least width is the stock's fault, and still no square fits.
    const place = narrowPlace(polygon, leastWidth);
    if (place) narrow.set(marks[i]!, place);
    panels.push({
      mark: marks[i]!,
      stock: stock.id,
      full,
      sliver: place !== null,
      outline: polygon,
      causes: causesOf(polygon, area, rectangleOfBox(cell)),
      cell: { x: cell.left, y: cell.bottom },
      course,
    });
  }
  return {
    start,
    panels,
    considered: found?.considered ?? 1,
    ...(found && { chosen: found.best }),
    runnersUp: found?.runnersUp ?? [],
    findings: layoutFindings({ wallId, area, stock, panels, narrow, capped: found?.capped ?? false }),
  };
}
