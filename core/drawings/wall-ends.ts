import { boxOf } from '../geometry/polygon';
import { endsOf, usualAngle, wallBefore } from '../job/corners';
import { heightsAt } from '../job/fold';
import type { Corner, Wall, Zone } from '../job/schema';
import { nextPart, partBefore } from '../job/zone-runs';
import { toHundredth, type Hundredth } from '../units';
import type { WorkedOut, WorkedWall } from '../worked-out';
import type { WriteLength } from './paper-figures';

/** An end of a wall that is a corner of the room, and the zones that run round it. */
export interface WallEnd {
  readonly side: 'left' | 'right';
  /** The wall met there. */
  readonly other: string;
  readonly corner: Corner;
  /** From the datum, hundredths. */
  readonly at: Hundredth;
  readonly zones: readonly ZoneAtEnd[];
}

export interface ZoneAtEnd {
  readonly id: string;
  readonly otherId: string;
  /** Its height at the corner, and that of its part on the other wall from that wall's datum, mm; null: it does not reach it. */
  readonly heights: readonly [number, number] | null;
  readonly otherHeights: readonly [number, number] | null;
  /** From the corner to the nearest joints, course by course from below, each distance once; none without steel. */
  readonly joints: readonly Hundredth[];
  readonly otherJoints: readonly Hundredth[];
  readonly linesContinue: boolean;
}

/** The ends of a wall that meet other walls, the left one first. */
export function wallEnds({ job, walls }: WorkedOut, { survey }: WorkedWall): WallEnd[] {
  const wall = job.walls.find(({ id }) => id === survey.wall.id);
  if (!wall) return [];
  const before = wallBefore(job, wall);
  const worked = (id: string) => walls.find((one) => one.survey.wall.id === id);
  const zonesAt = (side: 'left' | 'right'): ZoneAtEnd[] =>
    wall.zones.flatMap((zone) => {
      const part = side === 'right' ? nextPart(job, wall, zone) : partBefore(job, wall.id, zone.id);
      if (!part) return [];
      const far = side === 'right' ? 'left' : 'right';
      const leading = side === 'right' ? zone : part.zone;
      return [
        {
          id: zone.id,
          otherId: part.zone.id,
          heights: heightsOf(wall, zone, side),
          otherHeights: heightsOf(part.wall, part.zone, far),
          joints: jointsFrom(worked(wall.id), wall, zone, side),
          otherJoints: jointsFrom(worked(part.wall.id), part.wall, part.zone, far),
          linesContinue: leading.runsOn?.lines === 'continue',
        },
      ];
    });
  const { left, right } = endsOf(wall);
  return [
    ...(before?.corner
      ? [
          {
            side: 'left',
            other: before.id,
            corner: before.corner,
            at: toHundredth(left),
            zones: zonesAt('left'),
          } as const,
        ]
      : []),
    ...(wall.corner
      ? [
          {
            side: 'right',
            other: wall.corner.to,
            corner: wall.corner,
            at: toHundredth(right),
            zones: zonesAt('right'),
          } as const,
        ]
      : []),
  ];
}

/** "internal corner with wall B", its angle where it is not square. */
export function cornerWords({ corner, other }: WallEnd): string {
  const angle = corner.angle ?? usualAngle;
  return `${corner.kind} corner${angle === usualAngle ? '' : ` of ${angle}°`} with wall ${other}`;
}

/** What the fitter has to know of each end that a zone runs round, in sentences. */
export function cornerNotes(ends: readonly WallEnd[], write: WriteLength): string[] {
  return ends.flatMap((end) =>
    end.zones.map((zone) => {
      const from = `${end.side === 'right' ? 'Right' : 'Left'} end, ${write(end.at)} from the datum, ${cornerWords(end)}`;
      const heights = zone.heights ? `, at ${spanWords(zone.heights, write)} here` : '';
      const beyond = zone.otherHeights ? ` and ${spanWords(zone.otherHeights, write)} there` : '';
      return `${from}: ${zone.id} continues as ${zone.otherId} on wall ${end.other}${heights}${beyond}.${jointWords(zone, end, write)}`;
    }),
  );
}

function jointWords(
  { joints, otherJoints, linesContinue }: ZoneAtEnd,
  { other }: WallEnd,
  write: WriteLength,
): string {
  if (joints.length === 0 || otherJoints.length === 0) return '';
  const how = linesContinue
    ? 'Panel lines continue, counted on the faces of the walls; panels are cut at the corner.'
    : 'Panel lines start anew there.';
  return ` Nearest joint ${distances(joints, write)} from the corner here, ${distances(otherJoints, write)} on wall ${other}. ${how}`;
}

export function distances(joints: readonly Hundredth[], write: WriteLength): string {
  return joints.map(write).join(' and ');
}

function spanWords([from, to]: readonly [number, number], write: WriteLength): string {
  return `${write(toHundredth(from))} to ${write(toHundredth(to))}`;
}

function heightsOf(wall: Wall, zone: Zone, side: 'left' | 'right'): [number, number] | null {
  const heights = heightsAt(wall, zone, side);
  return heights && [heights.from, heights.to];
}

/** Of each course the panel nearest to the end: its far edge is the first joint as one goes along from the corner. */
function jointsFrom(
  worked: WorkedWall | undefined,
  wall: Wall,
  zone: Zone,
  side: 'left' | 'right',
): Hundredth[] {
  const panels = worked?.zones.find(({ area }) => area.zone.id === zone.id)?.layout?.panels ?? [];
  const end = toHundredth(endsOf(wall)[side]);
  const courses = new Map<number, { near: Hundredth; far: Hundredth }>();
  for (const { course, outline } of panels) {
    const { left, right } = boxOf(outline.outer);
    const [near, far] = side === 'right' ? [end - right, end - left] : [left - end, right - end];
    const known = courses.get(course);
    if (!known || near < known.near) courses.set(course, { near, far });
  }
  const inOrder = [...courses].sort(([a], [b]) => a - b).map(([, { far }]) => far);
  return [...new Set(inOrder)];
}
