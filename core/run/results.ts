import type { Cut, Offcut, Placement } from '../cutting/plan';
import { polygonArea, regionArea, type Point, type Polygon, type Ring } from '../geometry/polygon';
import { fromMinorUnits } from './whole-money';
import { toMm, toSquareMm } from '../units';
import type { JobSheet, WorkedOut, WorkedWall, WorkedZone } from '../worked-out';

/**
 * The results file, version 1: `lodeplan-results`. Lengths in mm, areas in mm², money in the job's currency. What layers,
 * amounts, dates and prices come to stands in it too where the command line writes it: `priced-results.ts`.
 */
export function toResults({ job, walls, cutting, findings }: WorkedOut) {
  return {
    format: 'lodeplan-results',
    version: 1,
    job: job.name,
    revision: job.revision,
    walls: walls.map(wallResult),
    cutting: {
      newSheets: cutting.newSheets,
      lowerBound: cutting.lowerBound,
      cost: fromMinorUnits(cutting.cost, job.currency),
      costLowerBound: fromMinorUnits(cutting.costLowerBound, job.currency),
      leastPossible: cutting.leastPossible,
      sheets: cutting.sheets.map(sheetResult),
    },
    findings,
  };
}

export type Results = ReturnType<typeof toResults>;

function wallResult({ survey, zones }: WorkedWall) {
  return { id: survey.wall.id, zones: zones.map(zoneResult) };
}

function zoneResult({ area, layout }: WorkedZone) {
  return {
    id: area.zone.id,
    regionArea: toSquareMm(regionArea(area.area)),
    start: layout && { x: toMm(layout.start.x), y: toMm(layout.start.y) },
    panels: (layout?.panels ?? []).map(({ mark, stock, full, outline, sliver }) => ({
      mark,
      stock,
      full,
      ...polygonResult(outline),
      sliver,
      area: toSquareMm(polygonArea(outline)),
    })),
  };
}

function sheetResult(planned: JobSheet) {
  return {
    id: planned.id,
    stock: planned.stock,
    delivery: planned.delivery,
    fromRack: planned.fromRack,
    width: toMm(planned.width),
    height: toMm(planned.height),
    pattern: planned.pattern,
    placements: planned.placements.map(placementResult),
    offcuts: planned.offcuts.map(offcutResult),
    cuts: planned.cuts.map(cutResult),
  };
}

function placementResult({ mark, outline, quarterTurns, turnedOver }: Placement) {
  return { mark, ...polygonResult(outline), quarterTurns, turnedOver };
}

function offcutResult({ x, y, width, height, keep }: Offcut) {
  return { x: toMm(x), y: toMm(y), width: toMm(width), height: toMm(height), keep };
}

function cutResult({ from, to, opens }: Cut) {
  return { from: pair(from), to: pair(to), ...(opens === undefined ? {} : { opens }) };
}

function polygonResult({ outer, holes }: Polygon) {
  return { outline: ringResult(outer), holes: holes.map(ringResult) };
}

function ringResult(ring: Ring) {
  return ring.map(pair);
}

function pair({ x, y }: Point): [number, number] {
  return [toMm(x), toMm(y)];
}
