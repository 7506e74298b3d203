import { middleOfEdge, radiusOfEdge } from '../../../core/job/arc-edges';
import type { Vertex } from '../../../core/job/schema';
import { verticesAt, type MmPoint, type ShapeRef } from '../../../core/job/shape';
import { lengthFigure } from '../../look/figures';
import { toScreen } from '../frame';
import { chosenObject } from '../gestures/what-can-change';
import type { Hand } from '../hand.svelte';
import { condensed, inks, type Pen } from './pen';

/** The radius of an arc and the middle of the arc, mm. */
export interface Radius {
  readonly at: MmPoint;
  readonly radius: number;
}

/** Of the arcs of what is chosen, and at Survey of the wall's outline; while edges are bent, of every shape there. */
export function radiiShown({ wall, open, tool }: Hand): Radius[] {
  if (!wall) return [];
  const chosen = chosenObject(open.selection);
  const zones = open.station === 'zones' && tool.kind === 'bend' ? wall.zones : [];
  const refs: (ShapeRef | null)[] = [
    ...(open.station === 'survey' ? [null] : []),
    ...zones.map(({ id }) => ({ kind: 'zone', id }) as const),
    ...(chosen && zones.length === 0 ? [chosen] : []),
  ];
  return refs.flatMap((ref) => radiiOf(verticesAt(wall, ref) ?? []));
}

function radiiOf(vertices: readonly Vertex[]): Radius[] {
  return vertices.flatMap((_, index) => {
    const radius = radiusOfEdge(vertices, index);
    return radius === null ? [] : [{ at: middleOfEdge(vertices, index), radius }];
  });
}

/** "R 1250" beside the middle of each arc. */
export function paintRadii({ context, frame }: Pen, radii: readonly Radius[]): void {
  // Setting a font makes the browser bring the styles of the page up to date first.
  if (radii.length === 0) return;
  context.font = `600 13px ${condensed}`;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  for (const { at, radius } of radii) {
    const { px, py } = toScreen(frame, at);
    const words = `R ${lengthFigure(Math.round(radius * 10) / 10)}`;
    context.fillStyle = inks.paper;
    context.fillRect(px + 9, py + 6, context.measureText(words).width + 6, 17);
    context.fillStyle = inks['red-lead'];
    context.fillText(words, px + 12, py + 15);
  }
}
