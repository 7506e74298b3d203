import fc from 'fast-check';
import type { MagnetRecord } from '../../core/job/magnet-schema';
import { readJobObject } from '../../core/job/read';
import type { Job, Wall } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedZone } from '../../core/worked-out';

/** A wall of 3 × 2 m with up to three zones of any sort, drilled through here and there; invented. */
export interface HungWall {
  readonly job: Job;
  readonly wall: Wall;
  readonly zones: readonly WorkedZone[];
}

export const wallWidth = 3000;
export const wallHeight = 2000;

const whole = (min: number, max: number) => fc.integer({ min, max });
/** Evenly; doubles of their own would mostly lie next to the least. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((n) => min + (n / 1e6) * (max - min));

/** Wider one way than the other: edges count by its longer side. */
export const block: MagnetRecord = {
  id: 'block',
  name: 'Block',
  shape: 'block',
  diameter: 20,
  length: 40,
  height: 5,
  remanence: 1.3,
  material: 'neodymium',
  recoil: 1.05,
  contact: 'metal',
  cover: 0,
};

/** Third of the wall's width for each zone, so that they neither cover each other nor all touch. */
const column = wallWidth / 3;

function shapeIn(left: number, sort: string, inset: number, height: number): unknown[] {
  const [right, foot] = [left + column - inset, 300];
  const top = foot + height;
  if (sort === 'sloping')
    return [
      [left, foot],
      [right, foot],
      [right, top - height / 3],
      [left, top],
    ];
  if (sort === 'arched')
    return [
      [left, foot],
      [right, foot],
      [right, top - 200],
      { arcTo: [left, top - 200], via: [(left + right) / 2, top] },
    ];
  if (sort === 'stepped')
    return [
      [left, foot],
      [right, foot],
      [right, foot + height / 2],
      [left + 400, foot + height / 2],
      [left + 400, top],
      [left, top],
    ];
  return [
    [left, foot],
    [right, foot],
    [right, top],
    [left, top],
  ];
}

const zone = fc.record({
  sort: fc.constantFrom('plain', 'plain', 'sloping', 'arched', 'stepped'),
  buildUp: fc.constantFrom('sheet', 'sheet', 'sheet', 'sheet', 'thick', 'coated', 'writable'),
  stock: fc.constantFrom(
    'small',
    'small',
    'small',
    'large',
    'large',
    'thin',
    'stainless',
    'ferritic',
    'soft',
  ),
  jointGap: fc.constantFrom(0, 0, 2, 5.5),
  inset: whole(0, 60),
  height: whole(250, 1500),
  hasHole: fc.boolean(),
  // Most zones untested: a reading that is too low for the model leaves nothing to say.
  test: fc.oneof(
    { weight: 5, arbitrary: fc.constant(undefined) },
    {
      weight: 1,
      arbitrary: fc.record({
        magnet: fc.constantFrom('N42-20x5', 'N35-12x5', 'Y30-30x10'),
        readings: fc.array(between(8, 20), { minLength: 1, maxLength: 4 }),
      }),
    },
  ),
});

const wall = fc.record({
  zones: fc.array(zone, { minLength: 1, maxLength: 3 }),
  holes: fc.array(fc.record({ x: whole(0, wallWidth), y: whole(0, wallHeight), width: whole(4, 60) }), {
    maxLength: 12,
  }),
  sockets: fc.array(fc.record({ x: whole(50, 2800), y: whole(50, 1800) }), { maxLength: 3 }),
  below: fc.option(
    fc.array(fc.record({ x: whole(0, 2500), width: whole(100, 1200), y: whole(0, 900) }), { maxLength: 2 }),
    { nil: undefined },
  ),
  strength: fc.constantFrom(
    {},
    { shearStrength: 1, peelStrength: 4 },
    { shearStrength: 0.01, peelStrength: 0.5 },
  ),
  filler: between(0.2, 1.6),
  hottest: fc.constantFrom(undefined, undefined, 35, 70),
});

export const hungWalls: fc.Arbitrary<HungWall> = wall.map((drawn) => {
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Proofs',
    stock: [
      { id: 'small', width: 300, height: 400, thickness: 0.5 },
      { id: 'large', width: 1000, height: 2000, thickness: 0.7 },
      { id: 'thin', width: 500, height: 500, thickness: 0.2 },
      { id: 'stainless', width: 500, height: 500, thickness: 0.5, steel: 'austenitic-stainless' },
      { id: 'ferritic', width: 500, height: 500, thickness: 0.6, steel: 'ferritic-stainless' },
      { id: 'soft', width: 250, height: 250, thickness: 1, steel: 'unknown' },
    ],
    magnets: [block],
    products: [
      { id: 'glue', name: 'Adhesive', layer: 'adhesive', unit: 'kg', density: 1.5, ...drawn.strength },
      { id: 'levelling', name: 'Filler', layer: 'filler', unit: 'kg', density: 1.2 },
    ],
    buildUps: [
      sheet('sheet', 'steel-panel', drawn.filler),
      sheet('thick', 'steel-panel', 2.9),
      sheet('writable', 'steel-panel-writable', drawn.filler, {
        kind: 'writable',
        product: 'writable-finish',
      }),
      { id: 'coated', kind: 'magnetic-coating', layers: [{ kind: 'magnetic-coating' }] },
    ],
    ...(drawn.hottest && { temperatures: { low: 5, high: drawn.hottest, atFixing: 20 } }),
    walls: [
      {
        id: 'A',
        outline: shapeIn(0, 'plain', column - wallWidth, wallHeight).map((p) => {
          const [x, y] = p as [number, number];
          return [x, y - 300];
        }),
        ground: { hollow: 1 },
        fixingPoints: drawn.holes.map((hole, i) => ({ id: `F${i}`, kind: 'hole', ...hole })),
        fittings: drawn.sockets.map((at, i) => ({
          id: `K${i}`,
          kind: 'socket',
          ...at,
          width: 80,
          height: 80,
        })),
        ...(drawn.below && {
          peopleBelow: drawn.below.map((one, i) => ({ id: `P${i}`, kind: 'seat', ...one })),
        }),
        zones: drawn.zones.map(({ sort, buildUp, stock, jointGap, inset, height, hasHole, test }, i) => ({
          id: `Z${i}`,
          shape: shapeIn(i * column, sort, inset, height),
          ...(hasHole && {
            holes: [shapeIn(i * column + 120, 'plain', column - 100, 90)],
          }),
          buildUp:
            buildUp === 'coated'
              ? 'magnetic-coating'
              : buildUp === 'writable'
                ? 'steel-panel-writable'
                : 'steel-panel',
          layers: buildUp,
          ...(buildUp !== 'coated' && {
            layout: { stock, jointGap, start: { x: i * column, y: 300 }, leastWidth: 0, redivide: false },
          }),
          ...(test && { pullTests: [{ id: 'T1', between: 0, ...test }] }),
        })),
      },
    ],
  });
  if (!job) throw new Error(findings.map(({ text }) => text).join(' '));
  const { survey, zones } = workOutFully(job).walls[0]!;
  return { job, wall: survey.wall, zones };
});

function sheet(id: string, kind: string, filler: number, ...finish: readonly unknown[]): unknown {
  return {
    id,
    kind,
    layers: [
      { kind: 'adhesive', product: 'glue', thickness: 1 },
      { kind: 'steel' },
      { kind: 'filler', product: 'levelling', thickness: filler },
      ...finish,
    ],
  };
}
