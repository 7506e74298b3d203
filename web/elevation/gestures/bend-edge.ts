import { distanceToSegment } from '../../../core/geometry/polygon';
import { chordLength, middleOfEdge, pointsAlong, riseTowards } from '../../../core/job/arc-edges';
import type { Vertex, Wall } from '../../../core/job/schema';
import { verticesAt, type MmPoint, type ShapeRef } from '../../../core/job/shape';
import { toHundredth } from '../../../core/units';
import { bend } from '../../job/changes/walls';
import type { Hand } from '../hand.svelte';
import type { Gesture, HandEvent } from './gesture';

/** An edge of a shape, by the vertex that it ends at. */
export interface Edge {
  readonly ref: ShapeRef | null;
  readonly index: number;
}

/** Pulls an edge into an arc; pulled flat it is straight again. It catches at half a circle. */
export function bendEdgeByHand(hand: Hand, start: HandEvent, { ref, index }: Edge): Gesture | null {
  const { wall } = hand;
  const vertices = wall && verticesAt(wall, ref);
  if (!wall || !vertices) return null;
  const half = chordLength(vertices, index) / 2;
  const middle = middleOfEdge(vertices, index);
  const offset = { x: middle.x - start.at.x, y: middle.y - start.at.y };
  if (ref) hand.lift({ kind: ref.kind, id: ref.id }, wall);
  let name = '';
  return {
    move(event) {
      const to = { x: event.at.x + offset.x, y: event.at.y + offset.y };
      const free = Math.round(riseTowards(vertices, index, to));
      const reach = hand.snapReachOf(event);
      const caught = [0, half, -half].find((rise) => Math.abs(free - rise) <= reach);
      const rise = Math.round((caught ?? free) * 100) / 100 + 0;
      hand.said = caught === undefined ? '' : caught === 0 ? 'straight' : 'half a circle';
      const change = bend(wall.id, ref, index, rise);
      name = change.name;
      hand.open.preview(change.change);
    },
    end: () => hand.commit(name),
    cancel: () => hand.cancel(),
  };
}

/** The edge nearest to a point, of everything with corners that can be changed at the station; the chosen one first. */
export function edgeAt({ wall, open }: Hand, at: MmPoint, reach: number): Edge | null {
  if (!wall) return null;
  let best: Edge | null = null;
  let least = reach;
  for (const ref of shapesAt(wall, open.station)) {
    const isChosen = ref !== null && ref.kind === open.selection?.kind && ref.id === open.selection.id;
    verticesAt(wall, ref)?.forEach((_, index, vertices) => {
      const distance = distanceToEdge(vertices, index, at) - (isChosen ? reach / 2 : 0);
      if (distance > least) return;
      best = { ref, index };
      least = distance;
    });
  }
  return best;
}

function shapesAt(wall: Wall, station: string): (ShapeRef | null)[] {
  if (station === 'zones') {
    return wall.zones.flatMap(({ id, holes }) => [
      { kind: 'zone', id } as const,
      ...holes.map((_, hole) => ({ kind: 'zone', id, hole }) as const),
    ]);
  }
  if (station !== 'survey') return [];
  const free = (kind: 'opening' | 'fitting', list: readonly { id: string; shape?: unknown }[]) =>
    list.flatMap(({ id, shape }) => (shape ? [{ kind, id }] : []));
  return [null, ...free('opening', wall.openings), ...free('fitting', wall.fittings)];
}

/** mm; an arc by chords, near enough for a hand. */
function distanceToEdge(vertices: readonly Vertex[], index: number, at: MmPoint): number {
  const points = pointsAlong(vertices, index, 24).map(inHundredths);
  const distances = points.slice(1).map((to, i) => distanceToSegment(inHundredths(at), points[i]!, to));
  return Math.min(...distances) / 100;
}

function inHundredths({ x, y }: MmPoint) {
  return { x: toHundredth(x), y: toHundredth(y) };
}
