import { endsOf } from './corners';
import { withEdgesCarried } from './edges-at-fold';
import {
  areSameHeights,
  carriedHeights,
  heightsAt,
  movedLine,
  nearEnough,
  toHeights,
  type FoldHeights,
} from './fold';
import { keepPieces } from './pieces';
import { layoutFrom } from './run-layout';
import type { Job, Layout, Wall, Zone } from './schema';
import { nextPart } from './zone-runs';

/**
 * What follows elsewhere from a change of one thing: at the corners of a room, and for pieces on their markings.
 *
 * @returns `after` itself where nothing follows
 */
export function keepInStep(before: Job, after: Job): Job {
  return before === after ? after : keepPieces(before, atCorners(before, after));
}

/**
 * What follows at the corners of a room from a change of one of its walls, so that every way of changing a job needs to
 * know nothing of corners: corners and runs that lead nowhere any more are taken out; a zone whose wall ends elsewhere
 * still reaches that end; of two parts of a zone that were in step at the corner, the one that was not changed takes
 * the heights, the build-up with its layers, the ends of the edges that go on round the corner and, where its lines
 * continue, the layout of the other.
 *
 * @returns `after` itself where nothing follows
 */
function atCorners(before: Job, after: Job): Job {
  if (before.walls === after.walls) return after;
  if (![...before.walls, ...after.walls].some(({ corner }) => corner)) return after;
  return inStep(before, atMovedEnds(before, withoutLooseEnds(before, after)));
}

/** Corners to walls that are gone or taken, and runs that no corner leads to or two zones claim: the newcomer goes. */
function withoutLooseEnds(before: Job, after: Job): Job {
  const ids = new Set(after.walls.map(({ id }) => id));
  const known = new Map(before.walls.map((wall) => [wall.id, wall]));
  const byAge = (has: (wall: Wall | undefined) => boolean) =>
    [...after.walls].sort((a, b) => Number(has(known.get(b.id))) - Number(has(known.get(a.id))));

  const cornersOf = new Map<string, string>();
  for (const { id, corner } of byAge((wall) => wall?.corner !== undefined)) {
    const isLoose = corner && (!ids.has(corner.to) || corner.to === id || cornersOf.has(corner.to));
    if (corner && !isLoose) cornersOf.set(corner.to, id);
  }
  const withCorners = mapWalls(after, (wall) => {
    if (!wall.corner || cornersOf.get(wall.corner.to) === wall.id) return wall;
    const { corner: _, ...rest } = wall;
    return rest as Wall;
  });

  return mapWalls(withCorners, (wall) => {
    if (!wall.zones.some(({ runsOn }) => runsOn)) return wall;
    const had = new Map(known.get(wall.id)?.zones.map((zone) => [zone.id, zone.runsOn]));
    const inOrder = [...wall.zones].sort(
      (a, b) => Number(had.get(b.id) !== undefined) - Number(had.get(a.id) !== undefined),
    );
    const taken = new Set<string>();
    const kept = new Set<Zone>();
    for (const zone of inOrder) {
      if (!zone.runsOn || taken.has(zone.runsOn.zone) || !nextPart(withCorners, wall, zone)) continue;
      taken.add(zone.runsOn.zone);
      kept.add(zone);
    }
    return mapZones(wall, (zone) => {
      if (!zone.runsOn || kept.has(zone)) return zone;
      const { runsOn: _, ...rest } = zone;
      return rest as Zone;
    });
  });
}

/** Zones in a run that reached an end of their wall reach it still where the wall was made longer or shorter. */
function atMovedEnds(before: Job, after: Job): Job {
  return mapWalls(after, (wall) => {
    const was = before.walls.find(({ id }) => id === wall.id);
    if (!was || was === wall || was.outline === wall.outline) return wall;
    return mapZones(wall, (zone) => {
      const earlier = was.zones.find(({ id }) => id === zone.id);
      if (earlier?.shape !== zone.shape) return zone;
      const sides: ('left' | 'right')[] = [
        ...(zone.runsOn ? (['right'] as const) : []),
        ...(runsOnTo(after, wall, zone) ? (['left'] as const) : []),
      ];
      return sides.reduce((moved, side) => {
        const [from, to] = [endsOf(was)[side], endsOf(wall)[side]];
        const isSame = Math.abs(from - to) < nearEnough || !heightsAt(was, earlier, side);
        return isSame ? moved : movedLine(moved, from, to);
      }, zone);
    });
  });
}

function runsOnTo(job: Job, wall: Wall, { id }: Zone): boolean {
  return job.walls.some(({ zones }) =>
    zones.some(({ runsOn }) => runsOn?.wall === wall.id && runsOn.zone === id),
  );
}

interface Link {
  readonly left: Wall;
  readonly right: Wall;
  readonly one: Zone;
  readonly other: Zone;
}

/** Goes along a run as far as a change reaches, either way. */
function inStep(before: Job, start: Job): Job {
  let job = start;
  const count = linksOf(job).length;
  for (let round = 0; round < count; round++) {
    const from = job;
    for (const { left, one } of linksOf(job)) job = followed(before, job, left.id, one.id);
    if (job === from) break;
  }
  return job;
}

function linksOf(job: Job): Link[] {
  return job.walls.flatMap((left) => left.zones.flatMap((one) => linkOf(job, left, one) ?? []));
}

function linkOf(job: Job, left: Wall, one: Zone): Link | undefined {
  const next = nextPart(job, left, one);
  return next && { left, right: next.wall, one, other: next.zone };
}

function followed(before: Job, start: Job, leftId: string, zoneId: string): Job {
  const was = findLink(before, leftId, zoneId);
  const is = findLink(start, leftId, zoneId);
  // A link that is new was made with both its parts as they should be.
  if (!was || !is || was.other.id !== is.other.id || was.right.id !== is.right.id) return start;
  if (was.one === is.one && was.other === is.other && was.left === is.left && was.right === is.right)
    return start;
  const job = shapeFollowed(start, was, is);
  return layoutFollowed(job, was, findLink(job, leftId, zoneId)!);
}

/** Heights, build-up and ends of edges: the part that was not changed takes those of the other. */
function shapeFollowed(job: Job, was: Link, is: Link): Job {
  const toRight = changed(was.one, is.one) || was.left.corner !== is.left.corner;
  const toLeft = changed(was.other, is.other);
  if (toRight === toLeft) return job;
  return toRight
    ? replaceZone(job, is.right.id, is.other, asPartOnRight(was, is))
    : replaceZone(job, is.left.id, is.one, asPartOnLeft(was, is));
}

/** The part on the left leads, unless the layout of the other alone was changed. */
function layoutFollowed(job: Job, was: Link, is: Link): Job {
  const fold = { left: is.left, right: is.right, one: is.one };
  const [leads, follows] = [was.one.layout !== is.one.layout, was.other.layout !== is.other.layout];
  if (follows && !leads) {
    const layout = layoutFrom(fold, is.other, is.one, 'left');
    return replaceZone(job, is.left.id, is.one, withLayout(is.one, layout));
  }
  const isMoved =
    was.one.runsOn !== is.one.runsOn ||
    was.left.corner !== is.left.corner ||
    was.left.outline !== is.left.outline ||
    was.right.outline !== is.right.outline;
  if (!leads && !isMoved) return job;
  const layout = layoutFrom(fold, is.one, is.other, 'right');
  return replaceZone(job, is.right.id, is.other, withLayout(is.other, layout));
}

function withLayout(zone: Zone, layout: Layout | undefined): Zone {
  if (JSON.stringify(layout) === JSON.stringify(zone.layout)) return zone;
  const { layout: _, ...rest } = zone;
  return layout ? { ...rest, layout } : (rest as Zone);
}

function findLink(job: Job, wallId: string, zoneId: string): Link | undefined {
  const wall = job.walls.find(({ id }) => id === wallId);
  const zone = wall?.zones.find(({ id }) => id === zoneId);
  return wall && zone && linkOf(job, wall, zone);
}

function changed(a: Zone, b: Zone): boolean {
  return a.shape !== b.shape || a.buildUp !== b.buildUp || a.layers !== b.layers || a.edges !== b.edges;
}

function asPartOnRight(was: Link, is: Link): Zone {
  const zone = fittedTo(is.other, heightsAt(is.right, is.other, 'left'), {
    was: carried(was.left, heightsAt(was.left, was.one, 'right')),
    is: carried(is.left, heightsAt(is.left, is.one, 'right')),
  });
  const part = withBuildUpOf(was.one, is.one, zone);
  return withEdgesCarried(
    { wall: is.right, zone: part, side: 'left' },
    { wall: is.left, zone: is.one, side: 'right' },
    { wall: was.left, zone: was.one, side: 'right' },
  );
}

function asPartOnLeft(was: Link, is: Link): Zone {
  const back = (heights: FoldHeights | null) => {
    const rise = is.left.corner?.rise ?? 0;
    return heights && { from: heights.from + rise, to: heights.to + rise };
  };
  const zone = fittedTo(is.one, heightsAt(is.left, is.one, 'right'), {
    was: back(heightsAt(was.right, was.other, 'left')),
    is: back(heightsAt(is.right, is.other, 'left')),
  });
  const part = withBuildUpOf(was.other, is.other, zone);
  return withEdgesCarried(
    { wall: is.left, zone: part, side: 'right' },
    { wall: is.right, zone: is.other, side: 'left' },
    { wall: was.right, zone: was.other, side: 'left' },
  );
}

function carried(left: Wall, heights: FoldHeights | null): FoldHeights | null {
  return heights && carriedHeights(left, heights);
}

/** Only what was in step before is kept so: two parts set apart by hand stay apart. */
function fittedTo(
  zone: Zone,
  own: FoldHeights | null,
  { was, is }: { was: FoldHeights | null; is: FoldHeights | null },
): Zone {
  if (!own || !was || !is || !areSameHeights(own, was) || areSameHeights(was, is)) return zone;
  return toHeights(zone, own, is);
}

/** Layers go with their build-up; other layers alone are taken by a part that had the same before. */
function withBuildUpOf(was: Zone, { buildUp, layers }: Zone, zone: Zone): Zone {
  const isOther = was.buildUp !== buildUp && zone.buildUp !== buildUp;
  const isRelaid = was.layers !== layers && zone.buildUp === buildUp && zone.layers === was.layers;
  if (!isOther && !isRelaid) return zone;
  const { layers: _, ...rest } = zone;
  return layers === undefined ? ({ ...rest, buildUp } as Zone) : { ...rest, buildUp, layers };
}

function replaceZone(job: Job, wallId: string, was: Zone, is: Zone): Job {
  if (was === is) return job;
  return mapWalls(job, (wall) =>
    wall.id === wallId ? mapZones(wall, (zone) => (zone === was ? is : zone)) : wall,
  );
}

function mapWalls(job: Job, map: (wall: Wall) => Wall): Job {
  const walls = job.walls.map(map);
  return walls.some((wall, i) => wall !== job.walls[i]) ? { ...job, walls } : job;
}

function mapZones(wall: Wall, map: (zone: Zone) => Zone): Wall {
  const zones = wall.zones.map(map);
  return zones.some((zone, i) => zone !== wall.zones[i]) ? { ...wall, zones } : wall;
}
