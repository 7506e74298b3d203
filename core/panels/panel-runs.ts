import { boxOf } from '../geometry/polygon';
import type { EdgeCause } from '../survey/surveyed-wall';
import type { Panel } from './panel';
import type { Seam, SeamAxis } from './seams';

/** Panels that follow each other without an interruption: a row from left to right, a column from below. */
export interface PanelRun {
  readonly axis: SeamAxis;
  /** Numbers of the panels. */
  readonly panels: readonly number[];
  /** What the first begins against and the last ends against. */
  readonly ends: readonly [EdgeCause | undefined, EdgeCause | undefined];
}

/** Panels joined along less than this share of the lower of their sides are not in one run. */
const LEAST_SHARE = 0.5;

/**
 * Rows and columns of a layout. A panel goes on with the neighbour that it shares most of its side with; where a
 * joint is staggered no column goes on.
 */
export function panelRuns(panels: readonly Panel[], seams: readonly Seam[]): PanelRun[] {
  return (['x', 'y'] as const).flatMap((axis) => {
    const next = new Map<number, number>();
    const hasOneBefore = new Set<number>();
    for (const [before, after] of followers(panels, seams, axis)) {
      next.set(before, after);
      hasOneBefore.add(after);
    }
    return panels.flatMap((_, first): PanelRun[] => {
      if (hasOneBefore.has(first)) return [];
      const run = [first];
      for (let at = next.get(first); at !== undefined; at = next.get(at)) run.push(at);
      const last = panels[run.at(-1)!]!;
      return [{ axis, panels: run, ends: [endCause(panels[first]!, axis, -1), endCause(last, axis, 1)] }];
    });
  });
}

/** Each panel with the one that follows it; no panel follows two. */
function followers(panels: readonly Panel[], seams: readonly Seam[], axis: SeamAxis): [number, number][] {
  const shared = new Map<string, { before: number; after: number; length: number }>();
  for (const seam of seams) {
    if (seam.axis !== axis) continue;
    const key = `${seam.before} ${seam.after}`;
    const known = shared.get(key) ?? { before: seam.before, after: seam.after, length: 0 };
    shared.set(key, { ...known, length: known.length + seam.to - seam.from });
  }
  const across = ({ outline }: Panel) => {
    const { left, right, bottom, top } = boxOf(outline.outer);
    return axis === 'x' ? top - bottom : right - left;
  };
  const taken = { before: new Set<number>(), after: new Set<number>() };
  return [...shared.values()]
    .filter(
      ({ before, after, length }) =>
        length >= LEAST_SHARE * Math.max(across(panels[before]!), across(panels[after]!)),
    )
    .sort((a, b) => b.length - a.length || a.before - b.before || a.after - b.after)
    .flatMap(({ before, after }): [number, number][] => {
      if (taken.before.has(before) || taken.after.has(after)) return [];
      taken.before.add(before);
      taken.after.add(after);
      return [[before, after]];
    });
}

/**
 * What the greatest part of a panel's outermost side is cut along; undefined if no side of it lies square there.
 *
 * @param towards −1 the left or lower side, 1 the right or upper one
 */
export function endCause({ outline, causes }: Panel, axis: SeamAxis, towards: -1 | 1): EdgeCause | undefined {
  const { left, right, bottom, top } = boxOf(outline.outer);
  const at = axis === 'x' ? (towards < 0 ? left : right) : towards < 0 ? bottom : top;
  let longest = 0;
  let cause: EdgeCause | undefined;
  outline.outer.forEach((a, i) => {
    const b = outline.outer[(i + 1) % outline.outer.length]!;
    if (a[axis] !== at || b[axis] !== at) return;
    const length = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    if (length <= longest) return;
    longest = length;
    cause = causes[0]?.[i];
  });
  return cause;
}

/** An edge that does not give way: steel that is too long has nowhere to go. The zone's own edge is free. */
export function isFixedEdge(cause: EdgeCause | undefined, zoneId: string): boolean {
  if (!cause || cause.kind === 'stock-edge') return false;
  return cause.kind !== 'zone' || cause.id !== zoneId;
}
