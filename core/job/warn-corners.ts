import type { Finding } from '../finding';
import { endsOf, rowOfWall, turnAt } from './corners';
import { areSameHeights, carriedHeights, heightsAt, nearEnough, type FoldHeights } from './fold';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from './names';
import type { Job, Wall, Zone } from './schema';
import { boxOfObject } from './shape';
import { haveSamePattern, mixesFormats, nextPart } from './zone-runs';

/** Rooms that do not close, and zones whose parts do not meet at the corner that they run round. */
export function cornerWarnings(job: Job): Finding[] {
  return [
    ...roomsThatDoNotClose(job),
    ...job.walls.flatMap((wall) => wall.zones.flatMap((zone) => partsApart(job, wall, zone))),
  ];
}

/** Angles are measured to about a degree a corner. */
const offACorner = 1;

/**
 * Whoever walks once round has turned once round: the outer angles of a simple polygon add up to 360°, to the right
 * inside a room, to the left round a pier.
 */
function roomsThatDoNotClose(job: Job): Finding[] {
  const seen = new Set<Wall>();
  return job.walls.flatMap((wall): Finding[] => {
    if (!wall.corner || seen.has(wall)) return [];
    const { walls, closed } = rowOfWall(job, wall.id);
    for (const each of walls) seen.add(each);
    if (!closed) return [];
    const turn = walls.reduce((sum, { corner }) => sum + (corner ? turnAt(corner) : 0), 0);
    if (Math.abs(Math.abs(turn) - 360) <= offACorner * walls.length) return [];
    const names = walls.map(({ id }) => id).join(', ');
    return [
      {
        level: 'warning',
        code: 'room-does-not-close',
        wall: wall.id,
        text:
          `Walls ${names} lead back to the first, but their corners turn by ${figure(Math.abs(turn))}° together ` +
          'and not by 360°; check kinds and angles, or take one corner out.',
      },
    ];
  });
}

function partsApart(job: Job, left: Wall, one: Zone): Finding[] {
  const next = nextPart(job, left, one);
  if (!next) return [];
  const { wall: right, zone: other } = next;
  const where = `${nameOfZone(one)} on ${nameOfWall(left)}`;
  const findings: Finding[] = [];
  const say = (level: 'warning' | 'note', code: string, text: string, at = { wall: left, zone: one }) =>
    findings.push({ level, code, wall: at.wall.id, object: at.zone.id, text: sentence(text) });

  const heights = heightsAt(left, one, 'right');
  const beyond = heightsAt(right, other, 'left');
  if (!heights) {
    const end = figure(endsOf(left).right);
    say(
      'warning',
      'zone-short-of-corner',
      `${where} runs round the corner to wall ${right.id}, but does not reach the right end of its wall at ${end}; make it reach the corner, or part the two.`,
    );
  }
  if (!beyond) {
    const end = figure(endsOf(right).left);
    say(
      'warning',
      'zone-short-of-corner',
      `${nameOfZone(other)} on ${nameOfWall(right)} is the part of zone ${one.id} round the corner, but does not reach the left end of its wall at ${end}; make it reach the corner, or part the two.`,
      { wall: right, zone: other },
    );
  }
  if (heights && beyond && !areSameHeights(carriedHeights(left, heights), beyond)) {
    const is = carriedHeights(left, heights);
    say(
      'warning',
      'zone-heights-differ',
      `${where} would run on from ${figure(is.from)} to ${figure(is.to)} on wall ${right.id}, but its part there goes from ${figure(beyond.from)} to ${figure(beyond.to)}; give both the same heights.`,
    );
  }
  if (heights) findings.push(...openingsBetween(left, one, heights, 'right', right));
  if (beyond) findings.push(...openingsBetween(right, other, beyond, 'left', left));
  linesApart(one, other, right, where, say);
  return findings;
}

function linesApart(
  one: Zone,
  other: Zone,
  right: Wall,
  where: string,
  say: (level: 'warning' | 'note', code: string, text: string) => void,
): void {
  if (one.buildUp !== other.buildUp) {
    say(
      'warning',
      'build-up-changes-at-corner',
      `${where} has another build-up than its part round the corner on wall ${right.id}; give both the same.`,
    );
  }
  if (one.runsOn?.lines !== 'continue' || !one.layout || !other.layout) return;
  if (haveSamePattern(one.layout, other.layout)) return;
  const why =
    mixesFormats(one.layout) || mixesFormats(other.layout)
      ? 'they mix stock formats; lay one format, or let the lines start anew'
      : 'stock sheet, direction, joint gap or stagger differ; make them the same, or let the lines start anew';
  say(
    'warning',
    'lines-stop-at-corner',
    `The panel lines of ${where} do not go on round the corner to wall ${right.id}: ${why}.`,
  );
}

/** Openings that take up the corner at the heights of the zone, so that nothing of it gets there. */
function openingsBetween(
  wall: Wall,
  zone: Zone,
  { from, to }: FoldHeights,
  side: 'left' | 'right',
  other: Wall,
): Finding[] {
  const end = endsOf(wall)[side];
  return wall.openings.flatMap((opening): Finding[] => {
    const { x, y, width, height } = boxOfObject(opening);
    const reach = opening.clearance + wall.rim[side] + nearEnough;
    const isThere =
      side === 'right' ? x + width + reach >= end && x < end : x - reach <= end && x + width > end;
    if (!isThere || y >= to - nearEnough || y + height <= from + nearEnough) return [];
    return [
      {
        level: 'warning',
        code: 'opening-at-corner',
        wall: wall.id,
        object: opening.id,
        text: sentence(
          `${nameOfPlaced(opening, 'opening')} on ${nameOfWall(wall)} takes up the corner that ${nameOfZone(zone)} runs round to wall ${other.id}; lead the zone past it, or part the two.`,
        ),
      },
    ];
  });
}

function figure(length: number): string {
  return String(Math.round(length * 100) / 100);
}
