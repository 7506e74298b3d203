import type { Hundredth } from '../../units';
import type { JointStretch } from '../joint-cells';
import { allowsJoint, type JointClearance } from '../joint-clearance';
import type { JointRules } from '../redivide';
import { liesInBand } from './bands';
import type { HandWish } from './hand-wishes';
import { stripOnLine } from './start-rules';

/** Rules for whoever moves joints because of slivers: away from cracks and bands, and not what was chosen by hand. */
export function rulesForJoints(
  clearance: JointClearance | undefined,
  wishes: readonly HandWish[] = [],
  gap: Hundredth,
): JointRules {
  const clear = clearance && allowsJoint(clearance, gap);
  const bands = wishes.flatMap((wish) => (wish.kind === 'no-joints' ? [wish.band] : []));
  const isHeld = wishes.some(({ kind }) => kind === 'joint-on-line' || kind === 'whole-panel')
    ? (stretch: JointStretch) => wishes.some((wish) => holds(wish, stretch, gap))
    : undefined;
  if (bands.length === 0) return { allowsJoint: clear, isHeld };
  return {
    allowsJoint: (axis, at, from, to) =>
      (clear?.(axis, at, from, to) ?? true) &&
      !bands.some((band) => liesInBand({ axis, at, gap, from, to }, band)),
    isHeld,
  };
}

/** A joint on its line, and the joints about a panel that is to be whole, stay where they are. */
function holds(wish: HandWish, { axis, at, before, after }: JointStretch, gap: Hundredth): boolean {
  if (wish.kind === 'joint-on-line') return wish.axis === axis && at === stripOnLine(wish.at[axis], gap);
  if (wish.kind !== 'whole-panel') return false;
  const { x, y } = wish.at;
  return [...before, ...after].some(
    ({ box }) => x >= box.left && x <= box.right && y >= box.bottom && y <= box.top,
  );
}
