import { placeOfPart, timesThatFit, type AlignedPart, type Spacing } from '../../core/job/arrange';
import { difference } from '../../core/geometry/clip';
import { regionArea } from '../../core/geometry/polygon';
import { extentOf, extentOfSeveral, extentOfVertices } from '../../core/job/extent';
import { moved } from '../../core/job/changes';
import { mostObjectsOfAKind } from '../../core/job/limits';
import type { MirrorLine } from '../../core/job/mirror';
import { isLocked } from '../../core/job/several';
import type { Wall } from '../../core/job/schema';
import { findObject, type MmBox, type ObjectRef, type WallObject } from '../../core/job/shape';
import { polygonOf, polygonOfVertices } from '../elevation/rings';
import { changeable, copyable } from '../elevation/gestures/what-can-change';
import type { NamedChange } from '../job/changes/named-change';
import {
  alignSeveral,
  copySeveral,
  lockSeveral,
  mirrorSeveral,
  moveSeveral,
  nameOfSeveral,
  repeatSeveral,
  scaleSeveral,
  spaceSeveral,
  takeOutSeveral,
  turnSeveral,
} from '../job/changes/several';
import type { OpenJob } from '../job/open-job.svelte';
import type { AlignTo } from './align-to.svelte';

/*
 * The commands for everything that is chosen. Each does what can be done and says so, or says why it did nothing; what
 * is locked, or belongs to another station, stays as it is and is named.
 */

/** What was done, or why nothing was. */
export interface Done {
  readonly done: boolean;
  readonly words: string;
}

export function align(open: OpenJob, part: AlignedPart, to: AlignTo): Done {
  const { wall, chosen } = open;
  const first = wall && chosen.refs[0] && findObject(wall, chosen.refs[0]);
  if (!wall || !first) return nothingChosen;
  if (to !== 'wall' && !chosen.isSeveral)
    return no('Choose another object to align with it, or align it to the wall.');
  const all = extentOfSeveral(wall, chosen.refs)!;
  const box = to === 'first' ? extentOf(first) : to === 'wall' ? extentOfVertices(wall.outline) : all;
  return forChosen(open, (refs) => alignSeveral(wall, refs, part, placeOfPart(box, part)));
}

export function space(open: OpenJob, axis: 'x' | 'y', spacing: Spacing, pitch?: number): Done {
  const { wall, chosen } = open;
  if (!wall || chosen.refs.length === 0) return nothingChosen;
  const least = pitch === undefined ? 3 : 2;
  if (chosen.refs.length < least) return no(`Choose ${least} objects or more to space them.`);
  const { refs, held } = changeable(open);
  // What stays as it is counts all the same: the others are spaced with it.
  const here = copyable(open).refs;
  return refs.length === 0 ? no(held) : make(open, spaceSeveral(wall, here, axis, spacing, pitch), held);
}

/** About an upright line (`x`) or a level one (`y`): through the middle of what is chosen, of the wall, or at a figure. */
export function mirror(open: OpenJob, axis: 'x' | 'y', about: 'own' | 'wall' | number): Done {
  const { wall, chosen } = open;
  const own = wall && extentOfSeveral(wall, chosen.refs);
  if (!wall || !own) return nothingChosen;
  const box = about === 'wall' ? extentOfVertices(wall.outline) : own;
  const middle = placeOfPart(box, axis === 'x' ? 'upright middle' : 'level middle');
  const line: MirrorLine = { axis, at: typeof about === 'number' ? about : middle };
  return forChosen(open, (refs) => mirrorSeveral(wall, refs, line));
}

export function moveBy(open: OpenJob, dx: number, dy: number): Done {
  return forChosen(open, (refs) => moveSeveral(open.wall!, refs, dx, dy));
}

/** The lower left corner of the box about all to a place, mm. */
export function moveTo(open: OpenJob, to: { x?: number; y?: number }): Done {
  return forChosen(open, (refs, box) => {
    const [dx, dy] = [(to.x ?? box.x) - box.x, (to.y ?? box.y) - box.y];
    return moveSeveral(open.wall!, refs, dx, dy);
  });
}

/** The box about all to another size, its lower left corner or its middle staying where it is. */
export function sizeTo(
  open: OpenJob,
  size: { width?: number; height?: number },
  keeps: 'lower left' | 'middle',
): Done {
  return forChosen(open, (refs, box) => {
    const width = size.width ?? box.width;
    const height = size.height ?? box.height;
    const corner = { x: box.x, y: box.y };
    const about = { x: box.x + (box.width - width) / 2, y: box.y + (box.height - height) / 2 };
    return scaleSeveral(open.wall!, refs, box, { ...(keeps === 'middle' ? about : corner), width, height });
  });
}

/** @param factor above 0: 1 leaves the size as it is */
export function scaleBy(open: OpenJob, factor: number, keeps: 'lower left' | 'middle'): Done {
  const box = open.wall && extentOfSeveral(open.wall, changeable(open).refs);
  if (!box) return no(changeable(open).held || nothingChosen.words);
  return sizeTo(open, { width: box.width * factor, height: box.height * factor }, keeps);
}

/** @param quarters anticlockwise */
export function turn(open: OpenJob, quarters: number): Done {
  return forChosen(open, (refs, { x, y, width, height }) =>
    turnSeveral(open.wall!, refs, { x: x + width / 2, y: y + height / 2 }, quarters),
  );
}

/** @param times how often; null for as often as it fits on the wall */
export function repeat(open: OpenJob, step: { dx: number; dy: number }, times: number | null): Done {
  const { wall } = open;
  const { refs, held } = copyable(open);
  if (!wall || refs.length === 0) return no(held || nothingChosen.words);
  if (step.dx === 0 && step.dy === 0)
    return no('Give a step to the right or up: without one the copies lie on one another.');
  const count = times ?? timesOnWall(wall, refs, step);
  if (count === 0) return no('Not even one more fits on the wall in this direction.');
  if (count * refs.length > mostObjectsOfAKind) {
    return no(
      `That is ${count * refs.length} objects at once; a wall holds ${mostObjectsOfAKind} of a kind.`,
    );
  }
  const change = repeatSeveral(open.job, wall, refs, step, count);
  const done = make(open, change, held);
  if (done.done) open.chosen.set([...refs, ...change.copies]);
  return done;
}

/** Locks all that is chosen, or unlocks it if all of it is locked already. */
export function lockOrUnlock(open: OpenJob): Done {
  const { wall, chosen } = open;
  if (!wall || chosen.refs.length === 0) return nothingChosen;
  return make(open, lockSeveral(wall, chosen.refs, !allLocked(open)), '');
}

export function allLocked({ wall, chosen }: Pick<OpenJob, 'wall' | 'chosen'>): boolean {
  return !!wall && chosen.refs.length > 0 && chosen.refs.every((ref) => isLocked(findObject(wall, ref)!));
}

export function takeOutChosen(open: OpenJob): Done {
  return forChosen(open, (refs) => takeOutSeveral(open.wall!, refs));
}

export function copyBeside(open: OpenJob): Done {
  const { wall } = open;
  const { refs, held } = copyable(open);
  const extent = wall && extentOfSeveral(wall, refs);
  if (!wall || !extent) return no(held || nothingChosen.words);
  const change = copySeveral(open.job, wall, refs, Math.round(extent.width) + 100, 0);
  const done = make(open, change, held);
  if (done.done) open.chosen.set(change.copies);
  return done;
}

/** Which of these stand out over the edge of their wall, or off it. */
export function beyondWall(wall: Wall, refs: readonly ObjectRef[]): ObjectRef[] {
  return refs.filter((ref) => {
    const object = findObject(wall, ref);
    return object !== undefined && !isOnWall(wall, object);
  });
}

function timesOnWall(wall: Wall, refs: readonly ObjectRef[], step: { dx: number; dy: number }): number {
  const objects = refs.map((ref) => findObject(wall, ref)!);
  const fits = (dx: number, dy: number) => objects.every((object) => isOnWall(wall, moved(object, dx, dy)));
  return timesThatFit(step, fits, Math.floor(mostObjectsOfAKind / refs.length));
}

function isOnWall(wall: Wall, object: WallObject): boolean {
  const outside = difference([{ ...polygonOf(object), holes: [] }], [polygonOfVertices(wall.outline)]);
  return regionArea(outside) === 0;
}

const nothingChosen: Done = { done: false, words: 'Nothing is chosen.' };

function no(words: string): Done {
  return { done: false, words };
}

/** Does it with all that can be changed. */
function forChosen(open: OpenJob, changeOf: (refs: readonly ObjectRef[], box: MmBox) => NamedChange): Done {
  const { refs, held } = changeable(open);
  const box = open.wall && extentOfSeveral(open.wall, refs);
  if (!box) return no(held || nothingChosen.words);
  return make(open, changeOf(refs, box), held);
}

function make(open: OpenJob, { name, change }: NamedChange, held: string): Done {
  const before = open.job;
  const refused = open.apply(name, change);
  open.refused = null;
  if (refused) return no(refused);
  if (open.job === before) return no(held || 'It is so already.');
  return { done: true, words: held ? `${name}. ${held}.` : `${name}.` };
}

/** "3 sockets, 1 locked". */
export function chosenWords({ wall, chosen }: Pick<OpenJob, 'wall' | 'chosen'>): string {
  if (!wall || chosen.refs.length === 0) return 'Nothing chosen';
  const name = nameOfSeveral(wall, chosen.refs);
  const locked = chosen.refs.filter((ref) => isLocked(findObject(wall, ref)!)).length;
  const held = locked === 0 ? '' : locked === chosen.refs.length ? ', locked' : `, ${locked} locked`;
  return name.charAt(0).toUpperCase() + name.slice(1) + held;
}
