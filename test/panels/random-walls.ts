import { flattenCircle } from '../../core/geometry/arc';
import { difference } from '../../core/geometry/clip';
import { boxOf, type Polygon, type Region } from '../../core/geometry/polygon';
import type { CuttingMethod } from '../../core/cutting/plan';
import type { ZoneArea } from '../../core/zones/zone-area';
import { layout, mmPolygon, mmRectangle } from './zones-by-hand';

/** A zone with openings and fittings, and how it is to be laid and cut; invented, the same for the same seed. */
export interface RandomWall {
  readonly name: string;
  readonly area: ZoneArea;
  /** The stock sheet, mm. */
  readonly width: number;
  readonly height: number;
  readonly method: CuttingMethod;
  /** mm */
  readonly kerf: number;
}

const formats = [
  [500, 500],
  [500, 500],
  [400, 300],
  [600, 400],
  [400, 700],
] as const;

/** A wall whose edges are level and upright, on whole millimetres. */
export function rectilinearWall(seed: number): RandomWall {
  const draw = drawFrom(seed);
  const [width, height] = [draw.whole(900, 2600), draw.whole(700, 1700)];
  const steps = draw.oneIn(4) ? [draw.whole(150, width / 2), draw.whole(150, height / 2)] : undefined;
  const shape = steps
    ? mmPolygon([
        [0, 0],
        [width, 0],
        [width, height - steps[1]!],
        [width - steps[0]!, height - steps[1]!],
        [width - steps[0]!, height],
        [0, height],
      ])
    : mmRectangle([0, 0, width, height]);
  return wall(`rectilinear wall ${seed}`, shape, openingsIn(draw, width, height, 4), draw);
}

/** A wall with a sloping ceiling, a gable, a round window or an arched door; no whole sheet need fit its rim. */
export function slopingWall(seed: number): RandomWall {
  const draw = drawFrom(seed);
  const [width, height] = [draw.whole(900, 2400), draw.whole(800, 1700)];
  const low = draw.whole(300, height - 100);
  const ridge = draw.whole(200, width - 200);
  const shapes = [
    () =>
      mmPolygon([
        [0, 0],
        [width, 0],
        [width, low],
        [0, height],
      ]),
    () =>
      mmPolygon([
        [0, 0],
        [width, 0],
        [width, low],
        [ridge, height],
        [0, low],
      ]),
    () =>
      mmPolygon([
        [0, 0],
        [width, 0],
        [width, low],
        [ridge, height],
        [0, height],
      ]),
    () => mmRectangle([0, 0, width, height]),
  ];
  const kind = draw.whole(0, shapes.length);
  const openings = openingsIn(draw, width, height, 2);
  if (kind === 3 || draw.oneIn(3)) openings.push(roundOpening(draw, width, height));
  return wall(`sloping wall ${seed}`, shapes[kind]!(), openings, draw);
}

function wall(name: string, shape: Polygon, openings: readonly Polygon[], draw: Draw): RandomWall {
  const [width, height] = formats[draw.whole(0, formats.length)]!;
  const changes = {
    start: 'best' as const,
    jointGap: draw.oneIn(4) ? 2 : 0,
    stagger: draw.oneIn(4) ? (draw.oneIn(2) ? 0.5 : 0.25) : 0,
    leastWidth: 50,
  };
  const region: Region = difference([shape], ...openings.map((opening) => [opening]));
  return {
    name,
    width,
    height,
    method: draw.oneIn(2) ? 'edge-to-edge' : 'free',
    kerf: draw.oneIn(3) ? 2 : 0,
    area: {
      zone: { id: 'Z1', name: '', shape: [], holes: [], buildUp: 'steel-panel', layout: layout(changes) },
      shape: { ring: shape.outer, arcs: [] },
      shapePolygon: shape,
      box: boxOf(shape.outer),
      area: region,
      boundaries: openings.map((polygon, i) => ({ cause: { kind: 'opening', id: `O${i + 1}` }, polygon })),
      findings: [],
    },
  };
}

/** Windows, hatches and doors, sockets and switches, of ordinary sizes. */
function openingsIn(draw: Draw, width: number, height: number, most: number): Polygon[] {
  return Array.from({ length: draw.whole(1, most + 1) }, () => {
    const isFitting = draw.oneIn(2);
    const [w, h] = isFitting
      ? [draw.whole(80, 250), draw.whole(80, 160)]
      : [draw.whole(300, 900), draw.whole(300, 900)];
    const isDoor = !isFitting && draw.oneIn(3);
    return mmRectangle([draw.whole(-100, width - 60), isDoor ? 0 : draw.whole(-100, height - 60), w, h]);
  });
}

function roundOpening(draw: Draw, width: number, height: number): Polygon {
  const diameter = draw.whole(150, 700);
  const centre = { x: 100 * draw.whole(0, width), y: 100 * draw.whole(0, height) };
  return { outer: flattenCircle(centre, 100 * diameter, 'circumscribed').ring, holes: [] };
}

interface Draw {
  /** From `from` up to but not including `to`. */
  readonly whole: (from: number, to: number) => number;
  readonly oneIn: (n: number) => boolean;
}

/** Mulberry32: the same numbers everywhere. */
function drawFrom(seed: number): Draw {
  let state = Math.imul(seed + 1, 0x9e3779b1);
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let value = Math.imul(state ^ (state >>> 15), 1 | state);
    value = (value + Math.imul(value ^ (value >>> 7), 61 | value)) ^ value;
    return ((value ^ (value >>> 14)) >>> 0) / 4294967296;
  };
  return {
    whole: (from, to) => Math.floor(from + next() * (to - from)),
    oneIn: (n) => next() * n < 1,
  };
}
