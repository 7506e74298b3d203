import type { Point, Polygon } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** Across which axis a joint lies: `x` is an upright joint, `y` a level one. */
export type SeamAxis = 'x' | 'y';

/**
 * A joint with steel on both sides: its strip runs from `at` to `at + gap` across the axis and from `from` to `to`
 * along the other; wall frame, hundredths.
 */
export interface JointRun {
  readonly axis: SeamAxis;
  readonly at: Hundredth;
  readonly gap: Hundredth;
  readonly from: Hundredth;
  readonly to: Hundredth;
}

/** Where two panels face each other across a joint. */
export interface Seam extends JointRun {
  /** Numbers of the panels: left of or below the joint, and right of or above it. */
  readonly before: number;
  readonly after: number;
}

/** Where the panels of a zone face each other, level or upright. */
export function seamsOf(panels: readonly Polygon[], gap: Hundredth): Seam[] {
  return (['x', 'y'] as const).flatMap((axis) => {
    const { ending, beginning } = edgesAcross(panels, axis);
    const seams: Seam[] = [];
    for (const edge of ending) {
      for (const other of beginning.get(edge.at + gap) ?? []) {
        const from = Math.max(edge.from, other.from);
        const to = Math.min(edge.to, other.to);
        if (from >= to || edge.panel === other.panel) continue;
        seams.push({ axis, at: edge.at, gap, from, to, before: edge.panel, after: other.panel });
      }
    }
    return seams;
  });
}

/** Seams in one line with no more than a joint's width between them, as one: a joint goes on through a crossing. */
export function jointRuns(seams: readonly JointRun[]): JointRun[] {
  const sorted = [...seams].sort(
    (a, b) => a.axis.localeCompare(b.axis) || a.at - b.at || a.gap - b.gap || a.from - b.from,
  );
  const runs: JointRun[] = [];
  for (const { axis, at, gap, from, to } of sorted) {
    const last = runs.at(-1);
    if (last?.axis === axis && last.at === at && last.gap === gap && from <= last.to + gap) {
      runs[runs.length - 1] = { ...last, to: Math.max(last.to, to) };
    } else runs.push({ axis, at, gap, from, to });
  }
  return runs;
}

interface CrossingEdge {
  readonly at: Hundredth;
  readonly from: Hundredth;
  readonly to: Hundredth;
  readonly panel: number;
}

/** Sides on which panels end, and those on which they begin, by where they are. */
function edgesAcross(panels: readonly Polygon[], axis: SeamAxis) {
  const along = axis === 'x' ? 'y' : 'x';
  const ending: CrossingEdge[] = [];
  const beginning = new Map<Hundredth, CrossingEdge[]>();
  const add = (a: Point, b: Point, panel: number) => {
    if (a[axis] !== b[axis]) return;
    const [from, to] = [Math.min(a[along], b[along]), Math.max(a[along], b[along])];
    const edge = { at: a[axis], from, to, panel };
    // Steel lies left of every edge: going up it ends there, going left it ends above.
    const ends = axis === 'x' ? b.y > a.y : b.x < a.x;
    if (ends) ending.push(edge);
    else if (beginning.has(edge.at)) beginning.get(edge.at)!.push(edge);
    else beginning.set(edge.at, [edge]);
  };
  panels.forEach(({ outer, holes }, panel) => {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => add(a, ring[(i + 1) % ring.length]!, panel));
    }
  });
  return { ending, beginning };
}
