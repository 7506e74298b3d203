import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import { areaEdges, type SlopingEdge } from './area-edges';
import { modulo, shiftOf, type Pattern } from './grid';
import { boardJointAxis, distanceBeside, distanceToCorner, type JointClearance } from './joint-clearance';
import type { JointRun, SeamAxis } from './seams';
import { shiftsOver } from './shifts-over';

/** How many joints of a start come too near to where the wall cracks, and the starts at which that changes. */
export interface NearJoints {
  /** Pairs of a joint, unbroken, and a place that it is too near to: as `nearJointsAmong` finds among its panels. */
  count(start: Point): number;
  /** Coordinates of starts, each way, at which a joint is just far enough. */
  readonly events: { readonly x: readonly Hundredth[]; readonly y: readonly Hundredth[] };
}

/** As `nearJointsOf`, for the areas that are laid with one pattern, each worked out once. */
export function nearJointsOfAreas(
  pattern: Pattern,
  clearance: JointClearance,
): (area: ZoneArea) => NearJoints {
  const known = new WeakMap<ZoneArea, NearJoints>();
  return (area) => {
    let near = known.get(area);
    if (!near) known.set(area, (near = nearJointsOf(area, pattern, clearance)));
    return near;
  };
}

/** A place that joints are to keep away from: which of them may be near to it, and which are. */
export interface JointPlace {
  /** Joints whose strip begins between these may be too near. */
  readonly low: Hundredth;
  readonly high: Hundredth;
  /** Along the joint: courses that end before `from`, or begin after `to`, have nothing to do with it. */
  readonly from: Hundredth;
  readonly to: Hundredth;
  isNear(seam: JointRun): boolean;
  /** Beginnings of strips that are just far enough, where they are known and need not be looked for. */
  readonly limits?: readonly Hundredth[];
}

/**
 * Counts, for the search for a start, the joints that are too near to corners of openings and to board joints,
 * without laying out panels: of every joint line of the grid that comes near to such a place, the stretches that
 * have steel on both sides are where edges of the area meet it.
 *
 * Level joints, and upright ones without stagger, hang on one coordinate of the start alone: those are counted once.
 */
export function nearJointsOf(area: ZoneArea, pattern: Pattern, clearance: JointClearance): NearJoints {
  return countJointsAt(area, pattern, (axis, gap) => crackPlacesAlong(axis, gap, clearance));
}

/** The same for any places; those that matter to joints across an axis, given the width of the joint. */
export function countJointsAt(
  area: ZoneArea,
  pattern: Pattern,
  placesAlong: (axis: SeamAxis, gap: Hundredth) => readonly JointPlace[],
): NearJoints {
  const edges = areaEdges(area.area).all;
  const { width, height, pitchX, pitchY } = pattern;
  const [gapX, gapY] = [pitchX - width, pitchY - height];
  const upright = jointLines('x', edges, gapX, pitchX, placesAlong('x', gapX));
  const level = jointLines('y', edges, gapY, pitchY, placesAlong('y', gapY));

  const levelAt = remember((y: Hundredth) => level.countAt(y + height));
  const uprightAt = remember((x: Hundredth) => upright.countAt(x + width));
  const staggeredAt = ({ x, y }: Point) =>
    upright.places.reduce((sum, place) => {
      const first = Math.floor((place.from - y - height) / pitchY);
      const last = Math.floor((place.to - y) / pitchY);
      for (let course = first; course <= last; course++) {
        const bottom = y + course * pitchY;
        const at = x + shiftOf(pattern, course) + width;
        sum += upright.countNear(place, at, bottom, bottom + height);
      }
      return sum;
    }, 0);

  return {
    count: (start) =>
      levelAt(modulo(start.y, pitchY)) +
      (pattern.stagger === 0 ? uprightAt(modulo(start.x, pitchX)) : staggeredAt(start)),
    events: {
      x: upright.limits.flatMap((at) => shiftsOver(area, pattern).map((shift) => at - width - shift)),
      y: level.limits.map((at) => at - height),
    },
  };
}

/** The joint lines across one axis: strips `gap` wide that begin at any coordinate, and so on every pitch. */
function jointLines(
  axis: SeamAxis,
  edges: readonly SlopingEdge[],
  gap: Hundredth,
  pitch: Hundredth,
  places: readonly JointPlace[],
) {
  const along = axis === 'x' ? 'y' : 'x';
  const seamsAt = remember((at: Hundredth): readonly JointRun[] =>
    common(crossSection(edges, axis, at, 'before'), crossSection(edges, axis, at + gap, 'after')).map(
      ([from, to]) => ({ axis, at, gap, from, to }),
    ),
  );

  function countNear(place: JointPlace, anyAt: Hundredth, from = -Infinity, to = Infinity): number {
    let count = 0;
    for (let at = place.low + modulo(anyAt - place.low, pitch); at <= place.high; at += pitch) {
      for (const seam of seamsAt(at)) {
        if (seam.to <= from || seam.from >= to) continue;
        const isWhole = seam.from >= from && seam.to <= to;
        const part = isWhole ? seam : { ...seam, from: Math.max(from, seam.from), to: Math.min(to, seam.to) };
        if (place.isNear(part)) count++;
      }
    }
    return count;
  }

  /** Beginnings of strips that are just far enough from a place, on either side of it. */
  function limitsOf(place: JointPlace): readonly Hundredth[] {
    if (place.limits) return place.limits;
    const nearAt = (at: Hundredth) => seamsAt(at).filter((seam) => place.isNear(seam)).length;
    const reach = (place.high - place.low - gap) / 2;
    const middle = (place.high + place.low + gap) / 2;
    const alongs = edges.flatMap(({ a, b }) => [a[along], b[along]]);
    const offsets = new Set<number>([reach]);
    for (const value of alongs) {
      const off = Math.max(place.from + reach - value, value - place.to + reach, 0);
      if (off > 0 && off < reach) offsets.add(Math.ceil(Math.sqrt(reach * reach - off * off)));
    }
    return [...offsets].flatMap((offset) => {
      const [right, left] = [Math.ceil(middle + offset), Math.floor(middle - offset) - gap];
      return [
        ...(nearAt(right - 1) > nearAt(right) ? [right] : []),
        ...(nearAt(left + 1) > nearAt(left) ? [left] : []),
      ];
    });
  }

  return {
    places,
    countNear,
    countAt: (at: Hundredth) => places.reduce((sum, place) => sum + countNear(place, at), 0),
    limits: [...new Set(places.flatMap(limitsOf))],
  };
}

function crackPlacesAlong(
  axis: SeamAxis,
  gap: Hundredth,
  { places, corners, boardJoints }: JointClearance,
): JointPlace[] {
  const along = axis === 'x' ? 'y' : 'x';
  return [
    ...places.corners.map((corner): JointPlace => ({
      low: corner[axis] - corners - gap,
      high: corner[axis] + corners,
      from: corner[along] - corners,
      to: corner[along] + corners,
      isNear: (seam) => distanceToCorner(seam, corner) < corners,
    })),
    ...places.boardJoints
      .filter((joint) => boardJointAxis(joint) === axis)
      .map((joint): JointPlace => ({
        low: Math.min(joint.from[axis], joint.to[axis]) - boardJoints - gap,
        high: Math.max(joint.from[axis], joint.to[axis]) + boardJoints,
        from: Math.min(joint.from[along], joint.to[along]),
        to: Math.max(joint.from[along], joint.to[along]),
        isNear: (seam) => distanceBeside(seam, joint) < boardJoints,
      })),
  ];
}

type Stretch = readonly [from: number, to: number];

/** Where the area lies just before a line across the axis, or just after it. */
function crossSection(
  edges: readonly SlopingEdge[],
  axis: SeamAxis,
  at: Hundredth,
  side: 'before' | 'after',
): Stretch[] {
  const along = axis === 'x' ? 'y' : 'x';
  const meetings: number[] = [];
  for (const { a, b } of edges) {
    const low = Math.min(a[axis], b[axis]);
    const high = Math.max(a[axis], b[axis]);
    const meets = side === 'before' ? low < at && at <= high : low <= at && at < high;
    if (!meets) continue;
    meetings.push(
      a[along] === b[along]
        ? a[along]
        : a[along] + ((b[along] - a[along]) * (at - a[axis])) / (b[axis] - a[axis]),
    );
  }
  meetings.sort((one, other) => one - other);
  const stretches: [number, number][] = [];
  for (let i = 0; i + 1 < meetings.length; i += 2) {
    const [from, to] = [meetings[i]!, meetings[i + 1]!];
    const last = stretches.at(-1);
    if (last?.[1] === from) last[1] = to;
    else if (from < to) stretches.push([from, to]);
  }
  return stretches;
}

/** What two lists of stretches, each ascending, have in common. */
function common(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  const shared: Stretch[] = [];
  for (const [from, to] of a) {
    for (const [otherFrom, otherTo] of b) {
      const low = Math.max(from, otherFrom);
      const high = Math.min(to, otherTo);
      if (low < high) shared.push([low, high]);
    }
  }
  return shared;
}

function remember<Value>(work: (key: number) => Value): (key: number) => Value {
  const known = new Map<number, Value>();
  return (key) => {
    let value = known.get(key);
    if (value === undefined) known.set(key, (value = work(key)));
    return value;
  };
}
