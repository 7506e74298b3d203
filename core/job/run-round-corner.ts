import type { Mm } from '../units';
import { freshId } from './changes';
import { endsOf, riseOf, wallAfter, wallBefore } from './corners';
import { withEdgesCarried } from './edges-at-fold';
import { areSameHeights, carriedHeights, endOfZone, heightsAt, movedLine, type FoldHeights } from './fold';
import { carriedLayout } from './run-layout';
import type { Job, RunsOn, Wall, Zone } from './schema';
import { rectangleVertices } from './shape';

export type RunSide = 'left' | 'right';

/** The job with the zone running round the corner, and where it goes on; or why it cannot, in a sentence. */
export type RoundCorner =
  { readonly job: Job; readonly wallId: string; readonly zoneId: string } | { readonly fault: string };

/**
 * Lets a zone run round the corner at an end of its wall: it is made to reach that end, and goes on along the next wall
 * at the same heights, for a length or to that wall's other end. A zone that is there already, from the corner on at the same
 * heights, becomes its other part.
 *
 * @param length along the next wall, from the corner; absent: all of it
 */
export function runRoundCorner(
  job: Job,
  wallId: string,
  zoneId: string,
  side: RunSide,
  length?: Mm,
): RoundCorner {
  const wall = job.walls.find(({ id }) => id === wallId);
  const zone = wall?.zones.find(({ id }) => id === zoneId);
  if (!wall || !zone) return { fault: `There is no zone ${zoneId} on wall ${wallId}.` };
  const other = side === 'right' ? wallAfter(job, wall) : wallBefore(job, wall);
  if (!other) {
    return {
      fault: `The ${side} end of wall ${wall.id} meets no other wall yet; say under Wall which one it meets.`,
    };
  }
  if (hasPartBeyond(job, wall, zone, side)) {
    return { fault: `Zone ${zone.id} runs round the corner to wall ${other.id} already.` };
  }
  const end = endOfZone(zone, side);
  if (!end) {
    return {
      fault: `Zone ${zone.id} does not end in an upright edge on its ${side}, so that it cannot be led on to the corner; give it one.`,
    };
  }
  const own = movedLine(zone, end.at, endsOf(wall)[side]);
  const heights = onOtherWall(side === 'right' ? wall : other, end.heights, side);
  const ready = other.zones.find((candidate) => isReady(job, other, candidate, heights, side));
  const { left, right } = endsOf(other);
  const most = right - left;
  const width = Math.min(length ?? most, most);
  const box = {
    x: side === 'right' ? left : tidy(right - width),
    y: heights.from,
    width: tidy(width),
    height: tidy(heights.to - heights.from),
  };
  const { layout: _, runsOn: __, holes: ___, markings: ____, edges: _____, ...alike } = zone;
  const made: Zone = ready ?? {
    ...alike,
    id: freshId(other, 'Z'),
    shape: rectangleVertices(box),
    holes: [],
  };
  const [onLeft, onRight] = side === 'right' ? [own, made] : [made, own];
  const [leftWall, rightWall] = side === 'right' ? [wall, other] : [other, wall];
  const runsOn: RunsOn = { ...onLeft.runsOn, wall: rightWall.id, zone: onRight.id, lines: 'continue' };
  const fold = { left: leftWall, right: rightWall, one: { ...onLeft, runsOn } };
  const laid = zone.layout && carriedLayout(fold, zone.layout, side, made.layout);
  const { layers: _layers, ...bare } = made;
  const layered = { ...bare, ...(zone.layers !== undefined && { layers: zone.layers }) } as Zone;
  const built: Zone = laid ? { ...layered, buildUp: zone.buildUp, layout: laid } : made;
  const part = withEdgesCarried(
    { wall: other, zone: built, side: side === 'right' ? 'left' : 'right' },
    { wall, zone: own, side },
  );
  const linked = (candidate: Zone) => (candidate.id === onLeft.id ? { ...candidate, runsOn } : candidate);
  const zonesOf = (entry: Wall): Zone[] => {
    const zones = entry.zones.map((each) => (entry === wall && each === zone ? own : each));
    const withPart =
      entry !== other
        ? zones
        : ready
          ? zones.map((each) => (each === ready ? part : each))
          : [...zones, part];
    return entry === leftWall ? withPart.map(linked) : withPart;
  };
  const walls = job.walls.map((entry) =>
    entry === wall || entry === other ? { ...entry, zones: zonesOf(entry) } : entry,
  );
  return { job: { ...job, walls }, wallId: other.id, zoneId: part.id };
}

/** The two parts become zones that have nothing to do with one another; both stay. */
export function partAtCorner(job: Job, wallId: string, zoneId: string): Job {
  return changeRunsOn(job, wallId, zoneId, null);
}

/** How the lines of a zone go on round the corner. */
export function changeRunsOn(
  job: Job,
  wallId: string,
  zoneId: string,
  patch: Partial<Pick<RunsOn, 'lines' | 'skip'>> | null,
): Job {
  const walls = job.walls.map((wall) => {
    if (wall.id !== wallId || !wall.zones.some(({ id, runsOn }) => id === zoneId && runsOn)) return wall;
    const zones = wall.zones.map((zone): Zone => {
      if (zone.id !== zoneId || !zone.runsOn) return zone;
      const { runsOn, ...rest } = zone;
      if (!patch) return rest as Zone;
      const { skip, ...changed } = { ...runsOn, ...patch };
      return { ...rest, runsOn: skip ? { ...changed, skip } : changed } as Zone;
    });
    return { ...wall, zones };
  });
  return walls.some((wall, i) => wall !== job.walls[i]) ? { ...job, walls } : job;
}

function hasPartBeyond(job: Job, wall: Wall, zone: Zone, side: RunSide): boolean {
  if (side === 'right') return zone.runsOn !== undefined;
  return runsOnto(job, wall, zone);
}

function runsOnto(job: Job, wall: Wall, { id }: Zone): boolean {
  return job.walls.some(({ zones }) =>
    zones.some(({ runsOn }) => runsOn?.wall === wall.id && runsOn.zone === id),
  );
}

function onOtherWall(left: Wall, heights: FoldHeights, side: RunSide): FoldHeights {
  if (side === 'right') return carriedHeights(left, heights);
  return { from: tidy(heights.from + riseOf(left)), to: tidy(heights.to + riseOf(left)) };
}

/** A zone that stands at the corner as the new part would, and runs on to nothing there. */
function isReady(job: Job, wall: Wall, zone: Zone, heights: FoldHeights, side: RunSide): boolean {
  const own = heightsAt(wall, zone, side === 'right' ? 'left' : 'right');
  if (!own || !areSameHeights(own, heights)) return false;
  return side === 'right' ? !runsOnto(job, wall, zone) : zone.runsOn === undefined;
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100;
}
