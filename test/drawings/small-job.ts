import { workOutBuildUp } from '../../core/build-up/worked-build-up';
import type { Cut, Offcut, Placement } from '../../core/cutting/plan';
import { difference, intersection } from '../../core/geometry/clip';
import type { Outline } from '../../core/geometry/outline';
import {
  boxOf,
  boxOfRegion,
  distanceToBoundary,
  polygonArea,
  rectangle,
  translate,
  type Point,
  type Polygon,
} from '../../core/geometry/polygon';
import { jobSchema, type Job, type Wall, type Zone } from '../../core/job/schema';
import type { MmBox } from '../../core/job/shape';
import type { Panel, ZoneLayout } from '../../core/panels/panel';
import type { JobSheet, WorkedOut, WorkedWall, WorkedZone } from '../../core/worked-out';
import type { EdgeCause, KeepOut, SurveyedWall } from '../../core/survey/surveyed-wall';
import type { ZoneArea } from '../../core/zones/zone-area';
import * as v from 'valibot';

/*
 * Two walls worked out by hand for the tests of the drawings: few enough panels to check by eye, yet with a notch,
 * a round hole, a sloping ceiling, a racked offcut and one cutting pattern that comes twice.
 * The stages are not used on purpose, so that a drawing's test fails for the drawing's sake alone.
 */

const stockId = 'S1';

export function smallJob(): Job {
  return v.parse(jobSchema, {
    format: 'lodeplan-job',
    version: 1,
    name: 'Small print room',
    client: 'Ida Example',
    reference: 'T-001',
    revision: 'B',
    date: '2026-03-02',
    stock: [
      {
        id: stockId,
        name: 'Steel 500 × 500 × 0.5',
        width: 500,
        height: 500,
        thickness: 0.5,
        price: 6.4,
        spares: 1,
      },
    ],
    rack: [{ id: 'R7', stock: stockId, width: 300, height: 300 }],
    walls: [
      {
        id: 'A',
        name: 'Proofing wall',
        delivery: '1',
        outline: [
          [0, 0],
          [4000, 0],
          [4000, 2100],
          [3400, 2600],
          [0, 2600],
        ],
        openings: [{ id: 'D1', kind: 'door', x: 200, y: 0, width: 900, height: 2040, hinge: 'left' }],
        fittings: [
          { id: 'K4', kind: 'socket', x: 2000, y: 760, width: 146, height: 86, clearance: 5 },
          { id: 'K5', kind: 'switch', x: 1180, y: 1050, width: 80, height: 80, clearance: 5 },
          { id: 'P1', kind: 'pipe', circle: { x: 2650, y: 1550, diameter: 40 }, clearance: 10 },
        ],
        zones: [
          {
            id: 'Z1',
            name: 'Proofs',
            buildUp: 'steel-panel',
            shape: corners({ x: 1400, y: 800, width: 1750, height: 1250 }),
            layout: { stock: stockId, start: 'lower-left' },
          },
          {
            id: 'Z2',
            name: 'Week plan',
            buildUp: 'writable',
            shape: corners({ x: 3300, y: 900, width: 600, height: 1000 }),
          },
        ],
      },
      {
        id: 'B',
        name: 'Type store',
        delivery: '2',
        outline: corners({ x: 0, y: 0, width: 2400, height: 2400 }),
        zones: [
          {
            id: 'Z1',
            name: 'Formes',
            buildUp: 'steel-panel-chalk',
            shape: corners({ x: 600, y: 900, width: 1000, height: 750 }),
            layout: { stock: stockId, start: 'lower-left' },
          },
        ],
      },
    ],
  });
}

export function smallWorkedOut(): WorkedOut {
  const job = smallJob();
  const walls = job.walls.map(surveyAndLayOut);
  const panels = walls.flatMap((wall) => wall.zones.flatMap((zone) => zone.layout?.panels ?? []));
  const sheets = planSheets(panels);
  const newSheets = sheets.filter((sheet) => sheet.fromRack === null).length;
  return {
    job,
    walls,
    cutting: {
      sheets,
      newSheets,
      lowerBound: newSheets,
      cost: newSheets * 640,
      costLowerBound: newSheets * 640,
      leastPossible: true,
      order: [{ stock: stockId, plan: newSheets, spares: 1 }],
    },
    findings: [],
    steps: 1,
  };
}

function corners({ x, y, width, height }: MmBox): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

function surveyAndLayOut(wall: Wall): WorkedWall {
  const outline: Outline = { ring: ringOf(wall.outline as [number, number][]), arcs: [] };
  const keepOuts: KeepOut[] = [
    ...wall.openings.map((opening) => keepOut('opening', opening)),
    ...wall.fittings.map((fitting) => keepOut('fitting', fitting)),
  ];
  const usable = difference([{ outer: outline.ring, holes: [] }], ...keepOuts.map(({ grown }) => [grown]));
  const survey: SurveyedWall = { wall, outline, keepOuts, rim: [], movementJoints: [], usable, findings: [] };
  return { survey, zones: wall.zones.map((zone) => layOut(survey, zone)), hung: [], hungFindings: [] };
}

function keepOut(kind: KeepOut['kind'], object: Wall['fittings'][number]): KeepOut {
  const clearance = object.clearance;
  if (object.circle) {
    const { x, y, diameter } = object.circle;
    const centre = { x: x * 100, y: y * 100 };
    const radius = diameter * 50;
    const ring = circleRing(centre, radius);
    return {
      kind,
      id: object.id,
      bare: { ring, arcs: [{ firstEdge: 0, edges: ring.length, centre, radius }] },
      // Circumscribed, as the survey does it.
      grown: { outer: circleRing(centre, (radius + clearance * 100) / Math.cos(Math.PI / 96)), holes: [] },
    };
  }
  const { x = 0, y = 0, width = 0, height = 0 } = object;
  const bare = rectangle(x * 100, y * 100, width * 100, height * 100);
  const grown = rectangle(
    (x - clearance) * 100,
    (y - clearance) * 100,
    (width + 2 * clearance) * 100,
    (height + 2 * clearance) * 100,
  );
  return { kind, id: object.id, bare: { ring: bare.outer, arcs: [] }, grown };
}

function layOut(survey: SurveyedWall, zone: Zone): WorkedZone {
  const shapePolygon: Polygon = { outer: ringOf(zone.shape as [number, number][]), holes: [] };
  const area: ZoneArea = {
    zone,
    shape: { ring: shapePolygon.outer, arcs: [] },
    shapePolygon,
    box: boxOfRegion([shapePolygon]),
    area: intersection(survey.usable, [shapePolygon]),
    boundaries: [
      { cause: { kind: 'zone', id: zone.id }, polygon: shapePolygon },
      ...survey.keepOuts.map(({ kind, id, grown }) => ({ cause: { kind, id } as EdgeCause, polygon: grown })),
    ],
    findings: [],
  };
  const buildUp = workOutBuildUp(smallJob(), survey, area);
  if (!zone.layout) return { area, layout: null, buildUp };
  const { left, bottom, right, top } = area.box;
  const panels: Panel[] = [];
  for (let y = bottom, course = 0; y < top; y += 50000, course++) {
    for (let x = left; x < right; x += 50000) {
      for (const outline of intersection(area.area, [rectangle(x, y, 50000, 50000)])) {
        panels.push({
          mark: `${survey.wall.id}-${zone.id}-${String(panels.length + 1).padStart(2, '0')}`,
          stock: stockId,
          full: polygonArea(outline) === 50000 ** 2,
          sliver: false,
          outline,
          causes: [outline.outer, ...outline.holes].map((ring) =>
            ring.map((a, i) => causeAt(middle(a, ring[(i + 1) % ring.length]!), area)),
          ),
          cell: { x, y },
          course,
        });
      }
    }
  }
  const layout: ZoneLayout = {
    start: { x: left, y: bottom },
    panels,
    considered: 1,
    runnersUp: [],
    fixing: { battens: [], order: panels.map(({ mark }) => mark) },
    creep: [],
    findings: [],
  };
  return { area, layout, buildUp };
}

function causeAt(point: Point, area: ZoneArea): EdgeCause {
  const found = area.boundaries.find(({ polygon }) => distanceToBoundary(point, polygon) <= 1);
  return found?.cause ?? { kind: 'stock-edge' };
}

/** Whole and notched panels lie on a stock sheet each; the others are paired in the order of the wall. */
function planSheets(panels: readonly Panel[]): JobSheet[] {
  const sheets: JobSheet[] = [];
  const size = (panel: Panel) => {
    const { left, bottom, right, top } = boxOf(panel.outline.outer);
    return { width: right - left, height: top - bottom };
  };
  const add = (
    delivery: string,
    pattern: number,
    fromRack: string | null,
    placed: readonly [Panel, number, number][],
    offcuts: Offcut[] = [],
    cuts: Cut[] = [],
  ) => {
    const side = fromRack ? 30000 : 50000;
    const bought = sheets.filter((sheet) => sheet.fromRack === null).length;
    sheets.push({
      id: fromRack ?? `N${bought + 1}`,
      delivery,
      pattern,
      stock: stockId,
      fromRack,
      width: side,
      height: side,
      placements: placed.map(([panel, x, y]): Placement => {
        const { left, bottom } = boxOf(panel.outline.outer);
        return {
          mark: panel.mark,
          outline: translate(panel.outline, x - left, y - bottom),
          quarterTurns: 0,
          turnedOver: false,
        };
      }),
      offcuts,
      cuts,
    });
  };
  let nextPattern = 5;
  for (const delivery of ['1', '2']) {
    const own = panels.filter(({ mark }) => mark.startsWith(delivery === '1' ? 'A' : 'B'));
    const low = own.filter((panel) => size(panel).width === 50000 && size(panel).height === 25000);
    const narrow = own.filter((panel) => size(panel).width === 25000 && size(panel).height === 50000);
    for (const panel of own) {
      const { width, height } = size(panel);
      if (panel.full) add(delivery, 1, null, [[panel, 0, 0]]);
      else if (width === 50000 && height === 50000) {
        const [ring, x, y] = openingRing(panel);
        const cuts = ring.map((from, i): Cut => {
          const to = ring[(i + 1) % ring.length]!;
          const move = (point: Point) => ({ x: point.x - x, y: point.y - y });
          return { from: move(from), to: move(to), opens: panel.mark };
        });
        const inside = (cut: Cut) => cut.from.y + cut.to.y > 0;
        add(delivery, nextPattern++, null, [[panel, 0, 0]], [], cuts.filter(inside));
      } else if (width === 25000 && height === 25000) {
        const offcuts = [
          { x: 25000, y: 0, width: 5000, height: 30000, keep: false },
          { x: 0, y: 25000, width: 25000, height: 5000, keep: false },
        ];
        add(delivery, 4, 'R7', [[panel, 0, 0]], offcuts, [
          { from: { x: 25000, y: 0 }, to: { x: 25000, y: 30000 } },
          { from: { x: 0, y: 25000 }, to: { x: 25000, y: 25000 } },
        ]);
      }
    }
    for (let i = 0; i < low.length; i += 2) {
      const pair = low.slice(i, i + 2).map((panel, j): [Panel, number, number] => [panel, 0, j * 25000]);
      const cut: Cut = { from: { x: 0, y: 25000 }, to: { x: 50000, y: 25000 } };
      const rest: Offcut = { x: 0, y: 25000, width: 50000, height: 25000, keep: true };
      add(delivery, pair.length === 2 ? 2 : 20, null, pair, pair.length === 2 ? [] : [rest], [cut]);
    }
    for (let i = 0; i < narrow.length; i += 2) {
      const pair = narrow.slice(i, i + 2).map((panel, j): [Panel, number, number] => [panel, j * 25000, 0]);
      add(delivery, 3, null, pair, [], [{ from: { x: 25000, y: 0 }, to: { x: 25000, y: 50000 } }]);
    }
  }
  return sheets;
}

/** The ring cut inside the panel's rectangle: its hole, or the notch with the panel's foot left out. */
function openingRing(panel: Panel): [readonly Point[], number, number] {
  const { left, bottom, right, top } = boxOf(panel.outline.outer);
  const missing = difference([rectangle(left, bottom, right - left, top - bottom)], [panel.outline]);
  return [missing[0]!.outer, left, bottom];
}

function ringOf(points: readonly [number, number][]): Point[] {
  return points.map(([x, y]) => ({ x: x * 100, y: y * 100 }));
}

function circleRing(centre: Point, radius: number): Point[] {
  return Array.from({ length: 96 }, (_, i) => ({
    x: Math.round(centre.x + radius * Math.cos((i * Math.PI) / 48)),
    y: Math.round(centre.y + radius * Math.sin((i * Math.PI) / 48)),
  }));
}

function middle(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}
