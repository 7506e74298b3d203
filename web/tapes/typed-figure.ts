import { moveVertex } from '../../core/job/changes';
import type { Job, Wall } from '../../core/job/schema';
import {
  boxOfObject,
  findObject,
  pointOf,
  verticesOf,
  type MmBox,
  type ObjectRef,
} from '../../core/job/shape';
import { sharedLine } from '../../core/job/shared-edges';
import { zoneEdges, type ZoneEdge } from '../../core/job/zone-edges';
import type { Marked } from '../../core/zones/running-marks';
import type { NamedChange } from '../job/changes/named-change';
import { nameOfObject } from '../job/changes/names';
import { moveBy, moveWallEdge, stretchTo } from '../job/changes/objects';
import { stretchTogether } from '../job/changes/zone-size';
import { setLine } from '../job/changes/survey-lines';
import { lengthFigure } from '../look/figures';
import type { HungMarked, TapeMarked } from './tape-marks';

export type Axis = 'x' | 'y';

/**
 * What a typed figure does to the thing whose edge it is: it moves as a whole, or the other edge stays, or the edges
 * of zones that touch it go with it.
 */
export type FigureDoes = 'move' | 'stretch' | 'together';

export type TypedFigure = { readonly change: NamedChange } | { readonly fault: string };

/** Which of them can be chosen for an edge, the usual one first. */
export function choicesFor({ kind, id, edge }: TapeMarked, wall: Wall): readonly FigureDoes[] {
  if (kind === 'wall' || edge === 'corner') return ['stretch'];
  if (edge === 'centre' || edge === 'joint') return ['move'];
  if (kind !== 'zone') return ['move', 'stretch'];
  return isZoneEdge(edge) && sharedLine(wall, id, edge)
    ? ['together', 'stretch', 'move']
    : ['stretch', 'move'];
}

/**
 * The change that brings an edge to a typed figure.
 *
 * @param marked what stands at the mark
 * @param from where it stands, mm from the datum
 * @param to the typed figure, mm from the datum
 */
export function changeForFigure(
  wall: Wall,
  axis: Axis,
  marked: Marked | HungMarked,
  from: number,
  to: number,
  does: FigureDoes,
): TypedFigure {
  if (marked.kind === 'wall') return { change: moveWallEdge(wall, axis, from, to) };
  if (marked.kind === 'line') return moveLine(wall, marked.id, axis, to);
  const ref: ObjectRef = { kind: marked.kind, id: marked.id };
  const object = findObject(wall, ref);
  if (!object) return { fault: `There is no ${marked.kind} ${marked.id} any more.` };
  if (marked.edge === 'corner') return { change: moveCorners(wall, ref, axis, marked.vertices ?? [], to) };
  const by = to - from;
  if (does === 'move') return { change: moveBy(wall, ref, axis === 'x' ? by : 0, axis === 'y' ? by : 0) };
  if (does === 'together' && isZoneEdge(marked.edge)) return moveTogether(wall, ref, marked.edge, by);
  const box = stretchedBox(boxOfObject(object), marked.edge, by);
  return box.width > 0 && box.height > 0
    ? { change: stretchTo(wall, ref, box) }
    : { fault: faultOfStretch(boxOfObject(object), marked.edge, nameOfObject(wall, ref)) };
}

function isZoneEdge(edge: string): edge is ZoneEdge {
  return zoneEdges.some((known) => known === edge);
}

function moveTogether(wall: Wall, ref: ObjectRef, edge: ZoneEdge, by: number): TypedFigure {
  const line = sharedLine(wall, ref.id, edge);
  const box = boxOfObject(findObject(wall, ref)!);
  if (!line) return { change: stretchTo(wall, ref, stretchedBox(box, edge, by)) };
  if (by >= line.least && by <= line.most)
    return { change: stretchTogether(wall, ref, stretchedBox(box, edge, by), [line]) };
  const [least, most] = [line.at + line.least, line.at + line.most].map(
    (place) => Math.round(place * 100) / 100,
  );
  const names = line.zones.join(', ');
  const room =
    Number.isFinite(least) && Number.isFinite(most)
      ? `from ${least} to ${most}`
      : Number.isFinite(least)
        ? `from ${least}`
        : `up to ${most}`;
  return { fault: `The edge that ${names} share can stand ${room}: beyond that a zone would be too narrow.` };
}

function moveLine(wall: Wall, id: string, axis: Axis, to: number): TypedFigure {
  const line = wall.lines?.find((entry) => entry.id === id);
  if (!line) return { fault: `There is no joint ${id} any more.` };
  const moved = ([x, y]: readonly [number, number]): [number, number] => (axis === 'x' ? [to, y] : [x, to]);
  return { change: setLine(wall.id, line, { from: moved(line.from), to: moved(line.to) }) };
}

/** The box with one edge moved; the others stay. */
function stretchedBox({ x, y, width, height }: MmBox, edge: Marked['edge'], by: number): MmBox {
  if (edge === 'left') return { x: x + by, y, width: width - by, height };
  if (edge === 'right') return { x, y, width: width + by, height };
  if (edge === 'bottom') return { x, y: y + by, width, height: height - by };
  return { x, y, width, height: height + by };
}

function faultOfStretch({ x, y, width, height }: MmBox, edge: Marked['edge'], name: string): string {
  if (edge === 'left')
    return `The left edge of ${name} stays left of its right edge at ${lengthFigure(x + width)}.`;
  if (edge === 'right')
    return `The right edge of ${name} stays right of its left edge at ${lengthFigure(x)}.`;
  if (edge === 'bottom')
    return `The lower edge of ${name} stays below its upper edge at ${lengthFigure(y + height)}.`;
  return `The upper edge of ${name} stays above its lower edge at ${lengthFigure(y)}.`;
}

/** Corners of a free shape that stand at one mark go together. */
function moveCorners(
  wall: Wall,
  ref: ObjectRef,
  axis: Axis,
  indexes: readonly number[],
  to: number,
): NamedChange {
  const vertices = verticesOf(findObject(wall, ref)!) ?? [];
  const moveOne = (job: Job, index: number): Job => {
    const at = pointOf(vertices[index]!);
    return moveVertex(job, wall.id, ref, index, axis === 'x' ? { x: to, y: at.y } : { x: at.x, y: to });
  };
  return {
    name: `Move a corner of ${nameOfObject(wall, ref)}`,
    change: (job) => indexes.reduce(moveOne, job),
  };
}
