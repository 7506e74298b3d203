import { tidy } from './changes';
import { isPiece } from './hung-kinds';
import { untested } from './hung-places';
import type { HungItem, HungKind } from './hung-schema';
import type { Marking } from './marking-schema';
import { boxOfMarking, sizeOfMarking, type MarkingRef } from './markings';
import type { Job, Wall, Zone } from './schema';
import { isLocked } from './several';
import type { MmBox, MmPoint } from './shape';

/*
 * Pieces of a wall game, and whatever else is moved about on a marking: which marking they belong to, and how they go with it.
 */

/** A marking that pieces are moved about on, with the zone that it is on. */
export interface PlayedMarking {
  readonly zone: Zone;
  readonly marking: Marking;
}

/** The marking that an item belongs to; undefined where it belongs to none or that one has gone. */
export function markingOf(wall: Wall, { marking: ref }: HungItem): PlayedMarking | undefined {
  return ref && findPlayed(wall, ref);
}

/** Whether the middle of an item lies on a marking. */
export function liesOn(item: MmBox, { zone, marking }: PlayedMarking): boolean {
  return isWithin(middleOf(item), boxOfMarking(zone, marking));
}

/** The board under a point of the wall: of two the one of the zone listed first, and on it the one painted last. */
export function boardAt(wall: Wall, point: MmPoint): PlayedMarking | undefined {
  return playedAt(wall, point, ({ kind }) => kind === 'board');
}

/** Middles of a board's squares, mm, wall frame; a piece stands where an upright and a level one cross. */
export function middlesOfSquares({ zone, marking }: PlayedMarking): Record<'x' | 'y', readonly number[]> {
  const { x, y } = boxOfMarking(zone, marking);
  const { across = 1, up = 1, side = 0 } = marking;
  const middles = (from: number, count: number) =>
    Array.from({ length: count }, (_, i) => tidy(from + (i + 0.5) * side));
  return { x: middles(x, across), y: middles(y, up) };
}

/**
 * What follows for pieces from a change of a wall: one that was put on a board, or moved to another, belongs to that; one that was
 * not touched goes where its marking goes, and keeps its square where the squares become larger. Locked ones stay.
 *
 * @returns `after` itself where nothing follows
 */
export function keepPieces(before: Job, after: Job): Job {
  // Another alternative has pieces and markings of its own, each where it should be.
  if (before.walls === after.walls || before.chosenAlternative?.id !== after.chosenAlternative?.id)
    return after;
  const earlier = new Map(before.walls.map((wall) => [wall.id, wall]));
  const walls = after.walls.map((wall) => {
    const was = earlier.get(wall.id);
    return was === wall || !wall.hung ? wall : withPieces(was, wall, after.hungKinds ?? []);
  });
  return walls.some((wall, i) => wall !== after.walls[i]) ? { ...after, walls } : after;
}

function withPieces(was: Wall | undefined, wall: Wall, own: readonly HungKind[]): Wall {
  const earlier = new Map(was?.hung?.map((item) => [item.id, item]));
  const hung = wall.hung!.map((item) => {
    if (!item.marking && !isPiece(item.kind, own)) return item;
    const before = earlier.get(item.id);
    if (before === item) return was ? carried(was, wall, item) : item;
    const isMoved = !before || before.x !== item.x || before.y !== item.y;
    // What somebody chose for it stays.
    return isMoved && (!before || isSameRef(before.marking, item.marking)) ? puttingOn(wall, item) : item;
  });
  return hung.some((item, i) => item !== wall.hung![i]) ? { ...wall, hung } : wall;
}

/** On the marking it lies on, if there is one; else it keeps what it had. */
function puttingOn(wall: Wall, item: HungItem): HungItem {
  const own = markingOf(wall, item);
  if (own && liesOn(item, own)) return item;
  const isLikeOwn = ({ kind }: Marking) => kind === 'board' || kind === own?.marking.kind;
  const found = playedAt(wall, middleOf(item), isLikeOwn);
  return found ? { ...item, marking: { zone: found.zone.id, marking: found.marking.id } } : item;
}

function carried(was: Wall, wall: Wall, item: HungItem): HungItem {
  if (isLocked(item)) return item;
  const [from, to] = [markingOf(was, item), markingOf(wall, item)];
  if (!from || !to || (from.zone === to.zone && from.marking === to.marking)) return item;
  const [before, after] = [boxOfMarking(from.zone, from.marking), boxOfMarking(to.zone, to.marking)];
  const [grownX, grownY] = growthOf(from.marking, to.marking);
  const middle = middleOf(item);
  const x = tidy(after.x + (middle.x - before.x) * grownX - item.width / 2);
  const y = tidy(after.y + (middle.y - before.y) * grownY - item.height / 2);
  return x === item.x && y === item.y ? item : { ...untested(item), x, y };
}

/** Of a board its squares count: with more of them the others stay as they are. */
function growthOf(from: Marking, to: Marking): [number, number] {
  if (to.kind === 'board') {
    const grown = (to.side ?? 1) / (from.side ?? 1);
    return [grown, grown];
  }
  const [was, is] = [sizeOfMarking(from), sizeOfMarking(to)];
  return [is.width / (was.width || 1), is.height / (was.height || 1)];
}

function playedAt(
  { zones }: Wall,
  point: MmPoint,
  counts: (marking: Marking) => boolean,
): PlayedMarking | undefined {
  for (const zone of zones) {
    const marking = zone.markings?.findLast((one) => counts(one) && isWithin(point, boxOfMarking(zone, one)));
    if (marking) return { zone, marking };
  }
  return undefined;
}

function findPlayed({ zones }: Wall, ref: MarkingRef): PlayedMarking | undefined {
  const zone = zones.find(({ id }) => id === ref.zone);
  const marking = zone?.markings?.find(({ id }) => id === ref.marking);
  return zone && marking && { zone, marking };
}

function isSameRef(a: MarkingRef | undefined, b: MarkingRef | undefined): boolean {
  return a?.zone === b?.zone && a?.marking === b?.marking;
}

function middleOf({ x, y, width, height }: MmBox): MmPoint {
  return { x: x + width / 2, y: y + height / 2 };
}

function isWithin({ x, y }: MmPoint, box: MmBox): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}
