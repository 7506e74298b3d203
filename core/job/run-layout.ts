import type { Mm } from '../units';
import { endsOf, riseOf } from './corners';
import type { Layout, Wall, Zone } from './schema';

/** What makes the lines of a zone: two parts with continuing lines have it in common. What is set by hand for one place is not of it. */
const lineFields = [
  'stock',
  'stocks',
  'cutFrom',
  'start',
  'turned',
  'jointGap',
  'stagger',
  'leastWidth',
  'leastArea',
  'redivide',
  'clearOfCorners',
  'clearOfBoardJoints',
] as const satisfies readonly (keyof Layout)[];

/** Two walls that meet in a corner, and the zone of the left one that runs round it. */
export interface Fold {
  readonly left: Wall;
  readonly right: Wall;
  readonly one: Zone;
}

/**
 * The layout that a part of a zone takes over from the part round the corner.
 *
 * @param side on which side of the corner the part is that takes it over
 */
export function layoutFrom(fold: Fold, source: Zone, zone: Zone, side: 'left' | 'right'): Layout | undefined {
  // Steel or none is a matter of the whole zone, however its lines run.
  if (!source.layout || !zone.layout) return source.layout && carriedLayout(fold, source.layout, side);
  if (fold.one.runsOn?.lines !== 'continue') return zone.layout;
  return carriedLayout(fold, source.layout, side, zone.layout);
}

/** The fields of a layout that make its lines, as the wall on the other side of a corner counts them. */
export function carriedLayout(
  fold: Fold,
  source: Layout,
  side: 'left' | 'right',
  onto: Partial<Layout> = {},
): Layout {
  const layout: Record<string, unknown> = { ...onto };
  for (const field of lineFields) {
    if (source[field] === undefined) delete layout[field];
    else layout[field] = source[field];
  }
  const { start } = source;
  if (typeof start === 'object') layout['start'] = { ...start, ...carriedPoint(fold, start, side) };
  return layout as Layout;
}

function carriedPoint({ left, right, one }: Fold, { x, y }: { x: Mm; y: Mm }, side: 'left' | 'right') {
  const sign = side === 'right' ? 1 : -1;
  const across = endsOf(right).left - endsOf(left).right + (one.runsOn?.skip ?? 0);
  return { x: tidy(x + sign * across), y: tidy(y - sign * riseOf(left)) };
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100;
}
