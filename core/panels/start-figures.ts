import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import type { Pattern } from './grid';
import { cutSizeOf, type CountStockSheets, type CutSize } from './cut-size';
import type { StartRules } from './by-hand/start-rules';
import type { NearJoints } from './near-joints';
import type { StartCandidate } from './panel';
import { cutLengthOf } from './cut-length';
import { isWholeCell, piecesOfGrid } from './pieces-of-grid';
import { narrowPlace } from './sliver';
import { asymmetryOf } from './symmetry';

/** What a search for the best start is about. */
export interface StartQuestion {
  readonly area: ZoneArea;
  readonly pattern: Pattern;
  readonly leastWidth: Hundredth;
  readonly countStockSheets: CountStockSheets;
  /** Lost between two panels cut from one sheet; 0 if not given. */
  readonly kerf?: Hundredth | undefined;
  /** Joints of an area that come too near to where the wall cracks; any joint will do if not given. */
  readonly nearJoints?: ((area: ZoneArea) => NearJoints) | undefined;
  /** What was chosen by hand about an area; no start is preferred by it if not given. */
  readonly rules?: ((area: ZoneArea) => StartRules) | undefined;
}

/**
 * What a start leads to, by cutting every panel: the plain way, against which the search's shortcuts are held,
 * and the search's own way where an edge of the area slopes.
 */
export function figuresOfStart(question: StartQuestion, start: Point): StartCandidate {
  const { area, pattern, leastWidth, countStockSheets } = question;
  const grid = { ...pattern, start };
  const pieces = piecesOfGrid(area.area, grid);
  const cut: CutSize[] = [];
  let slivers = 0;
  let cutLength = 0;
  for (const piece of pieces) {
    if (narrowPlace(piece.polygon, leastWidth)) slivers++;
    if (isWholeCell(piece)) continue;
    cut.push(cutSizeOf(piece.polygon));
    cutLength += cutLengthOf(piece.polygon, piece.cell);
  }
  return {
    start,
    ...(question.rules && { unmet: question.rules(area).unmet(start) }),
    slivers,
    nearCorners: question.nearJoints?.(area).count(start) ?? 0,
    stockSheets: pieces.length - cut.length + countStockSheets(cut),
    cutPanels: cut.length,
    cutLength,
    panels: pieces.length,
    asymmetry: asymmetryOf(grid, area.box),
  };
}
