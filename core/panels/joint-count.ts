import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { piecesOfGrid } from './pieces-of-grid';
import { jointRuns, seamsOf } from './seams';
import type { StartQuestion } from './start-figures';

/** Joints that a start leads to, unbroken ones as one, and their length, hundredths. */
export function jointsOfStart(
  { area, pattern }: Pick<StartQuestion, 'area' | 'pattern'>,
  start: Point,
): { readonly joints: number; readonly length: Hundredth } {
  const pieces = piecesOfGrid(area.area, { ...pattern, start }).map(({ polygon }) => polygon);
  const [gapX, gapY] = [pattern.pitchX - pattern.width, pattern.pitchY - pattern.height];
  const seams = seamsOf(pieces, gapX).filter(({ axis }) => axis === 'x');
  const runs = jointRuns([...seams, ...seamsOf(pieces, gapY).filter(({ axis }) => axis === 'y')]);
  return { joints: runs.length, length: runs.reduce((sum, { from, to }) => sum + to - from, 0) };
}
