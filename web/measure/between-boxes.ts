import type { MmBox, MmPoint } from '../../core/job/shape';

/** The two points between which two boxes are nearest; side by side, at the middle of the height they share. */
export function nearestPoints(a: MmBox, b: MmBox): { from: MmPoint; to: MmPoint } {
  const x = nearestAlong([a.x, a.x + a.width], [b.x, b.x + b.width]);
  const y = nearestAlong([a.y, a.y + a.height], [b.y, b.y + b.height]);
  return { from: { x: x[0], y: y[0] }, to: { x: x[1], y: y[1] } };
}

export function middles(a: MmBox, b: MmBox): { from: MmPoint; to: MmPoint } {
  return { from: middleOf(a), to: middleOf(b) };
}

function middleOf({ x, y, width, height }: MmBox): MmPoint {
  return { x: x + width / 2, y: y + height / 2 };
}

function nearestAlong(a: readonly [number, number], b: readonly [number, number]): [number, number] {
  if (a[1] < b[0]) return [a[1], b[0]];
  if (b[1] < a[0]) return [a[0], b[1]];
  const shared = (Math.max(a[0], b[0]) + Math.min(a[1], b[1])) / 2;
  return [shared, shared];
}
