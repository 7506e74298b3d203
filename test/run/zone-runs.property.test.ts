import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf, type Polygon } from '../../core/geometry/polygon';
import { changeWall } from '../../core/job/changes';
import { runRoundCorner } from '../../core/job/run-round-corner';
import type { Job, Layout, Opening } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { createCache } from '../../core/run/wall-cache';
import { inside, room, sheet, steel, wallOf } from '../job/room-walls';
import { areaOf, both, geometryOf, less } from '../survey/polyclip';

/*
 * The check owes nothing to how runs are laid: both walls are folded out into one long wall, the zone is laid there as any
 * zone is, and its panels are cut at the fold by another library.
 */

interface Plan {
  readonly widths: readonly [number, number];
  readonly reach: readonly [number, number];
  readonly y: number;
  readonly height: number;
  readonly rise: number;
  readonly size: readonly [number, number];
  readonly layout: Partial<Layout>;
  readonly opening: {
    readonly wall: 0 | 1;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const plan: fc.Arbitrary<Plan> = fc.record({
  widths: fc.tuple(tenths(800, 3000), tenths(800, 3000)),
  reach: fc.tuple(tenths(100, 700), tenths(100, 700)),
  y: tenths(300, 700),
  height: tenths(200, 1500),
  rise: tenths(-200, 200),
  size: fc.tuple(tenths(150, 600), tenths(150, 600)),
  layout: fc.record({
    start: fc.record({ x: tenths(-500, 500), y: tenths(-500, 500) }),
    stagger: fc.constantFrom(0, 0.5, 1 / 3, 0.2),
    jointGap: fc.constantFrom(0, 1.5, 3),
    turned: fc.boolean(),
  }),
  opening: fc.record({
    wall: fc.constantFrom(0, 1),
    x: tenths(0, 700),
    y: tenths(300, 1500),
    width: tenths(50, 300),
    height: tenths(50, 300),
  }),
});

function openingAt(x: number, y: number, { width, height }: Plan['opening']): Opening {
  return { id: 'O1', kind: 'free', x, y, width, height, clearance: 0 };
}

function folded(of: Plan, layout = of.layout): Job {
  const {
    widths: [a, b],
    reach,
    y,
    height,
    rise,
    size,
    opening,
  } = of;
  const zone = steel('Z1', [a - reach[0], y, reach[0], height], layout);
  const walls = [wallOf('A', a, inside('B', rise), [zone]), wallOf('B', b)];
  const result = runRoundCorner(room(walls, sheet(...size)), 'A', 'Z1', 'right', reach[1]);
  if ('fault' in result) throw new Error(result.fault);
  const at =
    opening.wall === 0
      ? openingAt(opening.x, opening.y, opening)
      : openingAt(opening.x, round(opening.y - rise), opening);
  return changeWall(result.job, opening.wall === 0 ? 'A' : 'B', (wall) => ({ ...wall, openings: [at] }));
}

function unfolded(of: Plan, start: { x: number; y: number }): Job {
  const {
    widths: [a, b],
    reach,
    y,
    height,
    size,
    opening,
  } = of;
  const zone = steel('Z1', [a - reach[0], y, reach[0] + reach[1], height], { ...of.layout, start });
  const x = opening.wall === 0 ? opening.x : a + opening.x;
  const wall = { ...wallOf('L', a + b, undefined, [zone]), openings: [openingAt(x, opening.y, opening)] };
  return room(
    [
      {
        ...wall,
        outline: [
          [0, -300],
          [a + b, -300],
          [a + b, 2900],
          [0, 2900],
        ],
      },
    ],
    sheet(...size),
  );
}

const round = (length: number) => Math.round(length * 100) / 100;
const panelsOf = (job: Job, wall = 0) =>
  workOutFully(job, { steps: 1 }).walls[wall]!.zones[0]!.layout!.panels.map(({ outline }) => outline);
const moved = ({ outer, holes }: Polygon, dx: number, dy: number): Polygon => ({
  outer: outer.map(({ x, y }) => ({ x: x + dx, y: y + dy })),
  holes: holes.map((ring) => ring.map(({ x, y }) => ({ x: x + dx, y: y + dy }))),
});
const key = (geometry: ReturnType<typeof less>) =>
  (geometry as [number, number][][][]).map((polygon) => {
    const box = boxOf(polygon[0]!.map(([x, y]) => ({ x, y })));
    return [box.left, box.bottom, box.right, box.top, Math.round(areaOf([polygon]))].join(' ');
  });

describe('panel lines that continue round a corner', () => {
  it('are those of both walls folded out into one, cut at the fold', () => {
    fc.assert(
      fc.property(plan, (of) => {
        // An opening across the fold would be two on the walls.
        fc.pre(of.opening.wall === 1 || of.opening.x + of.opening.width <= of.widths[0]);
        const fold = Math.round(of.widths[0] * 100);
        const walls = folded(of);
        const onWalls = [
          ...panelsOf(walls, 0),
          ...panelsOf(walls, 1).map((panel) => moved(panel, fold, Math.round(of.rise * 100))),
        ].flatMap((panel) => key([geometryOf(panel)] as never));
        const far = { left: [-1e6, fold], right: [fold, 1e6] } as const;
        const pieces = panelsOf(unfolded(of, of.layout.start as { x: number; y: number })).flatMap((panel) =>
          (['left', 'right'] as const).flatMap((side) => {
            const [from, to] = far[side];
            const half = geometryOf({
              outer: [
                [from, -1e6],
                [to, -1e6],
                [to, 1e6],
                [from, 1e6],
              ].map(([x, y]) => ({ x: x!, y: y! })),
              holes: [],
            });
            return key(both([geometryOf(panel)] as never, [half] as never));
          }),
        );
        expect(onWalls.sort()).toEqual(pieces.sort());
      }),
      { numRuns: 60 },
    );
  });
});

describe('a start that is best', () => {
  const best = (of: Plan) => folded(of, { ...of.layout, start: 'best', redivide: false });
  it('is searched over all parts and carried: no start of either wall alone has fewer slivers and stock sheets together', () => {
    fc.assert(
      fc.property(plan, (of) => {
        const job = best(of);
        const [a, b] = workOutFully(job, { steps: 1 }).walls.map(({ zones }) => zones[0]!.layout!);
        const rise = Math.round(of.rise * 100);
        expect(b!.start).toEqual({ x: a!.start.x - Math.round(of.widths[0] * 100), y: a!.start.y - rise });
        const slivers = (layouts: (typeof a)[]) =>
          layouts.flatMap((layout) => layout!.panels).filter(({ sliver }) => sliver).length;
        expect(a!.chosen!.slivers).toBe(slivers([a, b]));
        expect(a!.chosen!.panels).toBe(a!.panels.length + b!.panels.length);
        for (const start of ['lower-left', 'centre-on-joint'] as const) {
          const other = workOutFully(folded(of, { ...of.layout, start }), { steps: 1 }).walls.map(
            ({ zones }) => zones[0]!.layout!,
          );
          expect(a!.chosen!.slivers).toBeLessThanOrEqual(slivers(other));
        }
      }),
      { numRuns: 12 },
    );
  });
});

describe('a stock sheet cut in two at the corner', () => {
  const at = (skip?: number, kerf = 0, rim = 0) => {
    const zone = steel('Z1', [800, 500, 1200, 500], { start: { x: 800, y: 500 } });
    const walls = [wallOf('A', 2000, inside('B'), [zone]), wallOf('B', 2000)];
    const result = runRoundCorner(room(walls), 'A', 'Z1', 'right', 800);
    if ('fault' in result) throw new Error(result.fault);
    const rims = result.job.walls.map((wall) => ({
      ...wall,
      rim: { ...wall.rim, left: rim, right: rim },
      zones: wall.zones.map((each) =>
        each.runsOn && skip ? { ...each, runsOn: { ...each.runsOn, skip } } : each,
      ),
    }));
    return { ...result.job, walls: rims, cutting: { ...result.job.cutting, kerf } };
  };
  const widths = (job: Job) =>
    workOutFully(job, { steps: 40 }).walls.map(({ zones }) =>
      zones[0]!.layout!.panels.map(({ outline }) => {
        const { left, right } = boxOf(outline.outer);
        return (right - left) / 100;
      }),
    );
  it('makes the last panel before it and the first after it, and both come out of one', () => {
    expect(widths(at())).toEqual([
      [500, 500, 200],
      [300, 500],
    ]);
    const { cutting } = workOutFully(at(), { steps: 40 });
    expect(cutting.newSheets).toBe(4);
    expect(cutting.leastPossible).toBe(true);
    const marks = cutting.sheets.map(({ placements }) => placements.map(({ mark }) => mark).sort());
    expect(marks).toContainEqual(['A-Z1-03', 'B-Z1-01']);
  });
  it('loses what the rims take, unless that is skipped, and so a saw cut', () => {
    expect(widths(at(undefined, 0, 5))).toEqual([
      [500, 500, 195],
      [295, 500],
    ]);
    expect(widths(at(10, 0, 5))).toEqual([
      [500, 500, 195],
      [305, 490],
    ]);
    expect(widths(at(3, 3))).toEqual([
      [500, 500, 200],
      [303, 497],
    ]);
  });
  it('is laid anew where that is asked', () => {
    const job = at();
    const anew = {
      ...job,
      walls: job.walls.map((wall) => ({
        ...wall,
        zones: wall.zones.map((zone) =>
          zone.runsOn
            ? { ...zone, runsOn: { ...zone.runsOn, lines: 'anew' as const } }
            : { ...zone, layout: { ...zone.layout!, start: 'lower-left' as const } },
        ),
      })),
    };
    expect(widths(anew)).toEqual([
      [500, 500, 200],
      [500, 300],
    ]);
  });
  it('is laid again when only the wall round the corner has changed, and kept otherwise', () => {
    const cache = createCache();
    const job = at();
    const before = workOutFully(job, { steps: 1, cache });
    const wider = changeWall(job, 'A', (wall) => ({
      ...wall,
      outline: [
        [0, 0],
        [2100, 0],
        [2100, 2600],
        [0, 2600],
      ],
    }));
    const after = workOutFully(wider, { steps: 1, cache });
    expect(after.walls[1]).not.toBe(before.walls[1]);
    expect(after.walls[1]!.zones[0]!.layout!.start.x).toBe(
      before.walls[1]!.zones[0]!.layout!.start.x - 10000,
    );
    const again = workOutFully({ ...wider, name: 'Other' }, { steps: 1, cache });
    expect(again.walls[1]).toBe(after.walls[1]);
  });
});
