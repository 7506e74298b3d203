import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { room } from '../../core/holding/counted-magnet';
import { derating } from '../../core/holding/derating';
import { temperaturesOf } from '../../core/holding/held-item';
import { bandAt, holdingMap, type MapBand, type MapQuestion } from '../../core/holding/holding-map';
import { judgeHung, wallOfItems } from '../../core/holding/judge-wall';
import { across } from '../../core/holding/magnet';
import { pullAtPlace } from '../../core/holding/pull-at-place';
import { catalogue, magnetsOf } from '../../core/holding/ready-magnets';
import { behindMagnet, facesOf } from '../../core/holding/wall-faces';
import type { HungItem } from '../../core/job/hung-schema';
import { block, hungWalls, wallHeight, wallWidth, type HungWall } from './random-hung-wall';

const ownBlock = magnetsOf({ magnets: [block] }).get('block')!;
const questions = fc.record({
  magnet: fc.constantFrom(...catalogue, ownBlock, ownBlock, ownBlock),
  reach: fc.constantFrom(3, 10, 30, 80),
  use: fc.constantFrom('light-at-reach', 'handled', 'could-hurt' as const),
});

/** Doubles are drawn evenly by their bits, so that most would lie next to 0. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e7 }).map((n) => min + (n / 1e7) * (max - min));

/** Anywhere, or just on either side of where a band may end: about an edge, a screw or a stretch with people. */
const places = fc.array(
  fc.record({
    x: evenly(0, wallWidth),
    y: evenly(250, wallHeight),
    near: fc.constantFrom('nothing', 'edge', 'edge', 'edge', 'screw', 'people', 'people', 'people'),
    which: fc.nat(),
    along: evenly(0, 1),
    band: fc.constantFrom(0.5, 2),
    off: fc.oneof(evenly(-0.3, 0.3), evenly(-6, 6)),
  }),
  { minLength: 40, maxLength: 40 },
);
type Drawn = typeof places extends fc.Arbitrary<(infer T)[]> ? T : never;

/** The place that was drawn, on this wall. */
function placeOf({ job, wall, zones }: HungWall, { magnet }: MapQuestion, drawn: Drawn): Place {
  const { faces, screws } = facesOf(job, wall, zones, magnetsOf(job));
  const { which, along, band, off } = drawn;
  const distance = band * across(magnet) + off;
  const pick = <T>(all: readonly T[]) => all[which % all.length];
  if (drawn.near === 'edge') {
    const face = pick(faces);
    const ring = face && pick([face.outline.outer, ...face.outline.holes]);
    if (!ring) return drawn;
    const i = (which >> 8) % ring.length;
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    // To the left of an edge is the face's inside.
    const [nx, ny] = [-(b.y - a.y) / length, (b.x - a.x) / length];
    // At its very end as often as along it, so that round corners are met too.
    const t = along < 0.3 ? 0 : along;
    const turn = along < 0.3 ? along * 4 : 0;
    const [dx, dy] = [nx * Math.cos(turn) - ny * Math.sin(turn), nx * Math.sin(turn) + ny * Math.cos(turn)];
    return {
      x: (a.x + t * (b.x - a.x)) / 100 + dx * distance,
      y: (a.y + t * (b.y - a.y)) / 100 + dy * distance,
    };
  }
  const screw = drawn.near === 'screw' && pick(screws);
  if (screw) {
    const radius = screw.diameter / 2 + distance;
    const angle = 2 * Math.PI * along;
    return { x: screw.x + radius * Math.cos(angle), y: screw.y + radius * Math.sin(angle) };
  }
  const stretch = drawn.near === 'people' && pick(wall.peopleBelow ?? []);
  if (stretch) {
    const { x, width, y = 0 } = stretch;
    const half = across(magnet) / 2;
    const far = 300 + along * 1500;
    return pick([
      { x: x - half + off, y: far },
      { x: x + width + half + off, y: far },
      { x: x + along * width, y: y - half + off },
    ])!;
  }
  return drawn;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Nearer than this to where a band ends, mm, both answers are right. */
const blur = 0.05;

/** What the map is held against: the same asked at this very point. */
function pullAt({ job, wall, zones }: HungWall, { magnet }: MapQuestion, at: Place) {
  const faces = facesOf(job, wall, zones, magnetsOf(job));
  const { face, clearance } = behindMagnet(faces, at, across(magnet));
  if (!face) return { clearance, pull: 0, least: 0, refused: false };
  const placed = { magnet, x: 0, y: magnet.diameter / 2, ground: face.ground, clearance };
  const pull = pullAtPlace(magnet, face.ground, 0, temperaturesOf(job) ?? room);
  const { share } = derating([placed], 0);
  return {
    clearance,
    pull: pull.nominal * share,
    least: pull.least * share,
    refused: pull.refused.length > 0,
  };
}

function isBlurred(clearance: number, diameter: number): boolean {
  return Math.abs(clearance) < blur || Math.abs(clearance - 1.5 * diameter) < blur;
}

/** A hook as wide as its magnet, as a hung item. */
function hookAt({ magnet, reach, use }: MapQuestion, { x, y }: Place, weight: number): HungItem {
  const [diameter, { id }] = [across(magnet), magnet];
  return {
    id: 'H1',
    kind: 'hook',
    x: x - diameter / 2,
    y: y - diameter / 2,
    width: diameter,
    height: diameter,
    depth: reach,
    reach,
    weight,
    use,
    magnets: { magnet: id!, places: [[diameter / 2, diameter / 2]] },
  } as HungItem;
}

function verdictAt({ job, wall, zones }: HungWall, item: HungItem) {
  const hung = { ...wall, hung: [item] };
  const [judged] = judgeHung(wallOfItems(job, hung, zones));
  return judged!.verdict.verdict;
}

/** Whether a place is nearer than the blur to where a stretch with people ends. */
function isAtEndOfPeople({ wall }: HungWall, { x, y }: Place, diameter: number): boolean {
  return (wall.peopleBelow ?? []).some(({ x: left, width, y: foot = 0 }) =>
    [x - left + diameter / 2, left + width + diameter / 2 - x, y - foot + diameter / 2].some(
      (off) => Math.abs(off) < blur,
    ),
  );
}

function mapped(hungWall: HungWall, question: MapQuestion): MapBand[] {
  return holdingMap(hungWall.job, hungWall.wall, hungWall.zones, question);
}

describe('the holding map at any place of any wall', () => {
  it('says the pull that the place, its edges and its ground lead to', () => {
    const met = { full: 0, half: 0, none: 0 };
    fc.assert(
      fc.property(hungWalls, questions, fc.noBias(places), (hungWall, question, at) => {
        const bands = mapped(hungWall, question);
        for (const drawn of at) {
          const place = placeOf(hungWall, question, drawn);
          const expected = pullAt(hungWall, question, place);
          if (isBlurred(expected.clearance, across(question.magnet))) continue;
          const band = bandAt(bands, place);
          met[expected.pull === 0 ? 'none' : band?.isNearEdge ? 'half' : 'full'] += 1;
          expect(band?.pull ?? 0).toBeCloseTo(expected.pull, 9);
          expect(band?.leastPull ?? 0).toBeCloseTo(expected.least, 9);
          expect(band?.verdict === 'cannot be judged' && band.by === 'nothing').toBe(
            expected.refused && band?.verdict !== 'holds only if tested',
          );
        }
      }),
      { numRuns: 80, seed: 61 },
    );
    // Else the walls drawn would prove nothing.
    expect(Math.min(met.full, met.half, met.none)).toBeGreaterThan(100);
  });

  it('says what a hook hung there is judged: at the weight it gives, and not above', () => {
    fc.assert(
      fc.property(hungWalls, questions, fc.noBias(places), (hungWall, question, at) => {
        const bands = mapped(hungWall, question);
        const diameter = across(question.magnet);
        for (const drawn of at) {
          const place = placeOf(hungWall, question, drawn);
          const { clearance } = pullAt(hungWall, question, place);
          if (isBlurred(clearance, diameter) || isAtEndOfPeople(hungWall, place, diameter)) continue;
          const band = bandAt(bands, place);
          const judge = (weight: number) => verdictAt(hungWall, hookAt(question, place, weight));
          if (!band) {
            expect(judge(0.05)).toBe('does not hold');
            continue;
          }
          const { onHook, ifTested, verdict } = band;
          if (onHook > 0) expect(judge(onHook * (1 - 1e-6))).toBe(verdict);
          if (ifTested > onHook * (1 + 1e-5)) {
            expect(judge(ifTested * (1 - 1e-6))).toBe('holds only if tested');
            expect(judge(onHook * (1 + 1e-5) + 1e-9)).toBe('holds only if tested');
          }
          expect(['does not hold', 'cannot be judged']).toContain(judge(ifTested * (1 + 1e-5) + 1e-6));
          if (ifTested === 0) expect(judge(1e-4)).toBe(verdict);
        }
      }),
      { numRuns: 80, seed: 62 },
    );
  });

  it('has disjoint bands of different figures', () => {
    fc.assert(
      fc.property(hungWalls, questions, fc.noBias(places), (hungWall, question, at) => {
        const bands = mapped(hungWall, question);
        for (const place of at)
          expect(bands.filter((band) => bandAt([band], place)).length).toBeLessThanOrEqual(1);
        const figures = bands.map(({ region: _region, zones: _zones, panels: _panels, ...rest }) =>
          JSON.stringify(rest),
        );
        expect(new Set(figures).size).toBe(figures.length);
      }),
      { numRuns: 30, seed: 63 },
    );
  });
});
