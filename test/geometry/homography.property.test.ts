import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitView, project, type Point2, type PointPair } from '../../core/geometry/homography';

/** Any pinhole camera before a wall of 4 m × 2.7 m, 4000 × 3000 px = 12 Mpx, that has all of the wall before it. */
const camera = fc
  .record({
    x: fc.double({ min: -1500, max: 5500, noNaN: true }),
    y: fc.double({ min: 400, max: 2600, noNaN: true }),
    away: fc.double({ min: 1800, max: 7000, noNaN: true }),
    pan: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
    tilt: fc.double({ min: -0.35, max: 0.35, noNaN: true }),
    roll: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    focal: fc.double({ min: 2200, max: 4200, noNaN: true }),
  })
  .map(({ x, y, away, pan, tilt, roll, focal }) => (at: Point2): readonly [number, number, number] => {
    // Right, down, ahead of a camera that looks square at the wall; then turned by pan, tilt and roll.
    const [a, b, c] = [at[0] - x, y - at[1], away];
    const [a1, c1] = [a * Math.cos(pan) - c * Math.sin(pan), a * Math.sin(pan) + c * Math.cos(pan)];
    const [b2, c2] = [b * Math.cos(tilt) - c1 * Math.sin(tilt), b * Math.sin(tilt) + c1 * Math.cos(tilt)];
    const [a3, b3] = [a1 * Math.cos(roll) - b2 * Math.sin(roll), a1 * Math.sin(roll) + b2 * Math.cos(roll)];
    return [2000 + (focal * a3) / c2, 1500 + (focal * b3) / c2, c2];
  });

const corners: readonly Point2[] = [
  [0, 0],
  [4000, 0],
  [4000, 2700],
  [0, 2700],
];
const places = fc.array(
  fc.tuple(fc.double({ min: 0, max: 4000, noNaN: true }), fc.double({ min: 0, max: 2700, noNaN: true })),
  { minLength: 5, maxLength: 12 },
);

type Camera = (at: Point2) => readonly [number, number, number];

const seesWall = (look: Camera) => corners.every((corner) => look(corner)[2] > 300);
const pairsSeen = (look: Camera, points: readonly Point2[]): PointPair[] =>
  points.map((at) => ({ px: [look(at)[0], look(at)[1]], at }));

describe('synthetic pinhole views with known truth', () => {
  it('four corners of the wall: every place is found to 1 mm on 4 m', () => {
    fc.assert(
      fc.property(camera.filter(seesWall), places, (look, probes) => {
        const view = fitView(pairsSeen(look, corners));
        if ('fault' in view) return void expect(view.fault).toMatch(/in one line/);
        for (const at of probes) {
          const [x, y] = project(view.toWall, [look(at)[0], look(at)[1]]);
          expect(Math.hypot(x - at[0], y - at[1])).toBeLessThan(1);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('a door of known size: found to 1 mm over the whole wall, points as floats', () => {
    const door: readonly Point2[] = [
      [300, 0],
      [1226, 0],
      [1226, 2040],
      [300, 2040],
    ];
    fc.assert(
      fc.property(camera.filter(seesWall), places, (look, probes) => {
        const view = fitView(pairsSeen(look, door));
        if ('fault' in view) return void expect(view.fault).toMatch(/in one line/);
        for (const at of probes) {
          const [x, y] = project(view.toWall, [look(at)[0], look(at)[1]]);
          expect(Math.hypot(x - at[0], y - at[1])).toBeLessThan(1);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('there and back is the same point, for more points without errors the misses are nothing', () => {
    fc.assert(
      fc.property(camera.filter(seesWall), places, (look, more) => {
        const view = fitView(pairsSeen(look, [...corners, ...more]));
        if ('fault' in view) return void expect(view.fault).toMatch(/in one line|same place/);
        expect(view.rms).toBeLessThan(1e-3);
        for (const at of more) {
          const [x, y] = project(view.toPhoto, at);
          expect(Math.hypot(x - look(at)[0], y - look(at)[1])).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('with errors no small change of the view lessens the squared distances', () => {
    const wobble = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 40, maxLength: 40 });
    fc.assert(
      fc.property(camera.filter(seesWall), places, wobble, (look, more, errors) => {
        const pairs = pairsSeen(look, [...corners, ...more]).map(({ px: [x, y], at }, i): PointPair => ({
          px: [x + errors[2 * i]!, y + errors[2 * i + 1]!],
          at,
        }));
        const view = fitView(pairs);
        if ('fault' in view) return void expect(view.fault).toMatch(/in one line|same place|cross/);
        const error = (h: readonly number[]) =>
          pairs.reduce((sum, { px, at }) => {
            const [x, y] = project(h, px);
            return sum + (x - at[0]) ** 2 + (y - at[1]) ** 2;
          }, 0);
        const least = error(view.toWall);
        view.toWall.forEach((_, i) => {
          for (const by of [1e-5, -1e-5]) {
            const changed = view.toWall.map((entry, j) => (i === j ? entry * (1 + by) : entry));
            expect(error(changed)).toBeGreaterThanOrEqual(least * (1 - 1e-9));
          }
        });
      }),
      { numRuns: 100 },
    );
  });
});

describe('points that give no view', () => {
  const square: readonly PointPair[] = [
    { px: [100, 900], at: [0, 0] },
    { px: [900, 900], at: [1000, 0] },
    { px: [900, 100], at: [1000, 1000] },
    { px: [100, 100], at: [0, 1000] },
  ];
  const faultOf = (pairs: readonly PointPair[]) => {
    const view = fitView(pairs);
    return 'fault' in view ? view.fault : null;
  };
  const with_ = (i: number, patch: Partial<PointPair>) =>
    square.map((pair, j) => (i === j ? { ...pair, ...patch } : pair));

  it.each([
    ['none', [], /^No point is marked: mark at least four\.$/],
    ['three', square.slice(1), /^3 points are marked/],
    ['two at one place in the photo', with_(1, { px: [100.2, 900.2] }), /^Points 1 and 2 lie at the same/],
    ['two at one place on the wall', with_(3, { at: [1000, 1000] }), /^Points 3 and 4 have the same/],
    ['three in one line in the photo', with_(2, { px: [500, 500] }), /in one line/],
    ['three in one line on the wall', with_(1, { at: [500, 500] }), /in one line/],
    [
      'corners in the wrong order',
      [square[0]!, { ...square[1]!, px: square[2]!.px }, { ...square[2]!, px: square[1]!.px }, square[3]!],
      /cross/,
    ],
    ['mirrored', square.map(({ px: [x, y], at }) => ({ px: [1000 - x, y] as const, at })), /mirror/],
    ['not a number', with_(0, { px: [NaN, 3] }), /has no place/],
    [
      'five, four of them in one line',
      [0, 250, 500, 1000].map((x): PointPair => ({ px: [x, 900], at: [x, 0] })).concat(square[3]!),
      /in one line/,
    ],
    [
      'too many',
      Array.from({ length: 41 }, (_, i): PointPair => ({ px: [i, i * i], at: [i, -i * i] })),
      /40 are/,
    ],
  ])('%s: one clear sentence', (_, pairs, words) => {
    const fault = faultOf(pairs);
    expect(fault).toMatch(words);
    expect(fault).toMatch(/^[A-Z\d][^.]*\.$/);
  });

  it('a fifth point mends three in one line', () => {
    const lined = with_(2, { px: [500, 902], at: [500, 0] });
    expect(faultOf(lined)).toMatch(/in one line/);
    expect(faultOf([...lined, square[2]!])).toBeNull();
  });
});
