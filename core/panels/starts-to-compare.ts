import type { CrossEdges } from './area-cross-edges';
import { axisStarts, type AxisPattern, type AxisStart } from './axis-starts';
import type { Hundredth } from '../units';
import type { StartQuestion } from './start-figures';
import { coursesOver } from './start-meter';

/** Coordinates whose every pair is a start to compare, ascending, modulo the pitch. */
export interface StartsToCompare {
  readonly x: readonly AxisStart[];
  readonly y: readonly AxisStart[];
  readonly capped: boolean;
}

/** A search looks at this many cells at most; a zone of forty panels needs a tenth of it. */
const mostCells = 3_000_000;
/** Starts compared even where a single one has more cells than that. */
const leastStarts = 16;

/** All starts of both axes; in very large or very broken zones those at the longest edges. */
export function startsToCompare(question: StartQuestion, edges: CrossEdges): StartsToCompare {
  const { box } = question.area;
  const along = axisPatterns(question);
  const near = question.nearJoints?.(question.area);
  const rules = question.rules?.(question.area);
  // Joints that mirror onto joints: a panel or a joint in the middle.
  const symmetric = Math.floor((box.left + box.right - along.x.size) / 2);
  const x =
    onLines(rules?.only.x) ??
    axisStarts(
      edges.x,
      along.x,
      [symmetric, symmetric + Math.floor(along.x.pitch / 2), box.left, box.right - along.x.size],
      [...(near?.events.x ?? []), ...(rules?.events.x ?? [])],
    );
  const y =
    onLines(rules?.only.y) ??
    axisStarts(
      edges.y,
      along.y,
      [box.bottom, box.top - along.y.size],
      [...(near?.events.y ?? []), ...(rules?.events.y ?? [])],
    );

  const most = Math.max(leastStarts, mostStartsFor(question));
  if (x.length * y.length <= most) return { x, y, capped: false };
  const each = Math.max(1, Math.floor(Math.sqrt(most)));
  const keptX = heaviest(x, Math.max(each, Math.floor(most / y.length)));
  const keptY = heaviest(y, Math.max(1, Math.floor(most / keptX.length)));
  return { x: keptX, y: keptY, capped: true };
}

/** Where a joint has to lie on a line, every other start is out of the question. */
function onLines(only: readonly Hundredth[] | null | undefined): AxisStart[] | null {
  return only
    ? only.map((at) => ({ at, weight: Infinity, isEvent: true })).sort((a, b) => a.at - b.at)
    : null;
}

/** Starts whose cells are as many as one search looks at. */
export function mostStartsFor({ area: { box }, pattern }: StartQuestion): number {
  const columns = Math.ceil((box.right - box.left) / pattern.pitchX) + 1;
  return Math.floor(mostCells / (columns * coursesOver(box, pattern)));
}

export function axisPatterns({ pattern, leastWidth: least }: StartQuestion): {
  readonly x: AxisPattern;
  readonly y: AxisPattern;
} {
  return {
    x: { size: pattern.width, pitch: pattern.pitchX, least },
    y: { size: pattern.height, pitch: pattern.pitchY, least },
  };
}

function heaviest(starts: readonly AxisStart[], most: number): AxisStart[] {
  return [...starts]
    .sort((a, b) => b.weight - a.weight || a.at - b.at)
    .slice(0, most)
    .sort((a, b) => a.at - b.at);
}
