import { intersection as polyclipIntersection } from 'polyclip-ts';
import { boxOf, polygonArea, type Box, type Point, type Polygon } from '../../core/geometry/polygon';
import type { CutPanel, CuttingTask, DeliveryPlan, Placement, PlannedSheet } from '../../core/cutting/plan';
import { executeCuts } from './execute-cuts';

/*
 * Says what is wrong with a plan. Knows the task and the file format, and nothing of how plans are made.
 * Overlaps are measured by polyclip-ts, which the product does not use.
 */

/** @returns one sentence a fault; [] for a sound plan */
export function faultsOf(task: CuttingTask, plan: DeliveryPlan): string[] {
  const faults: string[] = [];
  const fault = (text: string) => void faults.push(text);
  const panels = new Map(task.panels.map((panel) => [panel.mark, panel]));
  const placed = plan.sheets.flatMap((sheet) => sheet.placements.map(({ mark }) => mark));
  for (const mark of panels.keys()) {
    const times = placed.filter((other) => other === mark).length;
    if (times !== 1) fault(`${mark} is placed ${times} times.`);
  }
  if (placed.length !== task.panels.length) fault('Panels are placed that the task does not have.');

  const racked = plan.sheets.flatMap(({ fromRack }) => (fromRack === null ? [] : [fromRack]));
  if (new Set(racked).size !== racked.length) fault('A rack piece is used twice.');
  const bought = plan.sheets.filter(({ fromRack }) => fromRack === null);
  if (bought.length !== plan.newSheets)
    fault(`newSheets says ${plan.newSheets}, there are ${bought.length}.`);
  const cost = bought.reduce((sum, { stock }) => sum + priceOf(task, stock), 0);
  if (cost !== plan.cost) fault(`cost says ${plan.cost}, the sheets cost ${cost}.`);
  if (plan.lowerBound > plan.newSheets)
    fault(`The bound ${plan.lowerBound} exceeds ${plan.newSheets} sheets.`);
  if (plan.costLowerBound > plan.cost)
    fault(`The bound ${plan.costLowerBound} exceeds the cost ${plan.cost}.`);

  plan.sheets.forEach((sheet, i) => {
    for (const text of sheetFaults(task, sheet, panels)) fault(`Stock sheet ${i + 1}: ${text}`);
  });
  return faults;
}

function priceOf(task: CuttingTask, id: string): number {
  return task.stock.find((stock) => stock.id === id)!.price;
}

function sheetFaults(
  task: CuttingTask,
  sheet: PlannedSheet,
  panels: ReadonlyMap<string, CutPanel>,
): string[] {
  const faults: string[] = [];
  const stock = task.stock.find(({ id }) => id === sheet.stock);
  if (!stock) return [`unknown stock ${sheet.stock}.`];
  const source = sheet.fromRack === null ? stock : task.rack.find(({ id }) => id === sheet.fromRack);
  if (!source) return [`unknown rack piece ${sheet.fromRack}.`];
  if (sheet.fromRack !== null && 'stock' in source && source.stock !== sheet.stock)
    faults.push('wrong stock.');
  const trim = sheet.fromRack === null ? (stock.trim ?? noTrim) : noTrim;
  const usable: Box = {
    left: trim.left,
    bottom: trim.bottom,
    right: trim.left + source.width,
    top: trim.bottom + source.height,
  };
  if (usable.right + trim.right !== sheet.width || usable.top + trim.top !== sheet.height)
    faults.push('wrong size.');
  if (sheet.placements.length === 0) faults.push('nothing is cut from it.');

  for (const placement of sheet.placements) {
    const panel = panels.get(placement.mark);
    if (!panel) continue;
    if (!panel.stock.includes(sheet.stock)) faults.push(`${panel.mark} may not be cut from it.`);
    if (placement.turnedOver && stock.hasFace)
      faults.push(`${panel.mark} is turned over on stock with a face.`);
    if (!isMovedCopy(panel.outline, placement)) faults.push(`${panel.mark} has changed its shape.`);
    const { left, bottom, right, top } = boxOf(placement.outline.outer);
    if (isBeyond({ left, bottom, right, top }, usable)) {
      faults.push(`${panel.mark} hangs over the edge.`);
    }
  }
  forPairs(sheet.placements, (a, b) => {
    if (apart(boxOf(a.outline.outer), boxOf(b.outline.outer), task.kerf)) return;
    const shared = sharedArea(a.outline, b.outline);
    if (shared > 1) faults.push(`${a.mark} and ${b.mark} overlap by ${shared}.`);
    const distance = distanceBetween(a.outline, b.outline);
    if (distance < task.kerf - 1e-6) faults.push(`${a.mark} and ${b.mark} are only ${distance} apart.`);
  });

  const offcuts = sheet.offcuts.map((offcut) => ({
    left: offcut.x,
    bottom: offcut.y,
    right: offcut.x + offcut.width,
    top: offcut.y + offcut.height,
    keep: offcut.keep,
  }));
  for (const { left, bottom, right, top, keep } of offcuts) {
    if (isBeyond({ left, bottom, right, top }, usable) || left >= right || bottom >= top) {
      faults.push('an offcut does not lie on it.');
    }
    const [a, b] = task.leastOffcut;
    const [w, h] = [right - left, top - bottom];
    if (keep !== ((w >= a && h >= b) || (w >= b && h >= a)))
      faults.push(`an offcut ${w} × ${h} keeps wrongly.`);
    for (const { mark, outline } of sheet.placements) {
      if (apart(boxOf(outline.outer), { left, bottom, right, top }, task.kerf)) continue;
      const shape = ring(left, bottom, right, top);
      if (sharedArea(outline, shape) > 1) faults.push(`an offcut overlaps ${mark}.`);
      if (distanceBetween(outline, shape) < task.kerf - 1e-6)
        faults.push(`an offcut has no kerf to ${mark}.`);
    }
  }
  forPairs(offcuts, (a, b) => {
    if (!apart(a, b, task.kerf)) faults.push('two offcuts overlap or share a kerf.');
  });

  const only = sheet.placements.length === 1 ? boxOf(sheet.placements[0]!.outline.outer) : null;
  const isWhole = only !== null && polygonArea(sheet.placements[0]!.outline) === source.width * source.height;
  const margins = marginCuts(sheet, usable, task.kerf);
  faults.push(...margins.faults);
  const cuts = sheet.cuts.slice(margins.count);
  if (isWhole !== (cuts.length === 0)) faults.push('a whole stock sheet is cut, or a cut one is not.');
  const trimmed = { ...sheet, cuts };
  if (task.method === 'edge-to-edge') faults.push(...executeCuts(trimmed, usable, task.kerf));
  else faults.push(...untracedEdges(trimmed, usable, task.kerf));
  return faults;
}

const noTrim = { left: 0, right: 0, bottom: 0, top: 0 };

function isBeyond(box: Box, usable: Box): boolean {
  return (
    box.left < usable.left || box.bottom < usable.bottom || box.right > usable.right || box.top > usable.top
  );
}

/**
 * The first cuts take the margins off, one each, right across what is left, in any order. A margin's kerf lies inside
 * it as far as there is room.
 */
function marginCuts(
  { width, height, cuts }: PlannedSheet,
  usable: Box,
  kerf: number,
): { count: number; faults: string[] } {
  const rest: Box = { left: 0, bottom: 0, right: width, top: height };
  const pending = (['left', 'right', 'bottom', 'top'] as const).filter((side) => rest[side] !== usable[side]);
  const count = pending.length;
  for (const { from, to } of cuts.slice(0, count)) {
    const upright = from.x === to.x && from.y === rest.bottom && to.y === rest.top;
    const level = from.y === to.y && from.x === rest.left && to.x === rest.right;
    const at = {
      left: upright && from.x === Math.max(0, usable.left - kerf),
      right: upright && from.x === usable.right,
      bottom: level && from.y === Math.max(0, usable.bottom - kerf),
      top: level && from.y === usable.top,
    };
    const side = pending.find((one) => at[one]);
    if (side === undefined) return { count, faults: ['a margin is not cut off first.'] };
    pending.splice(pending.indexOf(side), 1);
    Object.assign(rest, { [side]: usable[side] });
  }
  return { count, faults: pending.length > 0 ? ['a margin is not cut off.'] : [] };
}

function forPairs<T>(list: readonly T[], visit: (a: T, b: T) => void): void {
  list.forEach((a, i) => list.slice(i + 1).forEach((b) => visit(a, b)));
}

function apart(a: Box, b: Box, kerf: number): boolean {
  return (
    a.right + kerf <= b.left ||
    b.right + kerf <= a.left ||
    a.top + kerf <= b.bottom ||
    b.top + kerf <= a.bottom
  );
}

function ring(left: number, bottom: number, right: number, top: number): Polygon {
  const corners: [number, number][] = [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
  return { outer: corners.map(([x, y]) => ({ x, y })), holes: [] };
}

/** The panel turned over if it says so, then turned as it says, is the placement but for a move. */
function isMovedCopy(panel: Polygon, { outline, quarterTurns, turnedOver }: Placement): boolean {
  let points = [...panel.outer, ...panel.holes.flat()].map(({ x, y }) => ({ x: turnedOver ? -x : x, y }));
  for (let turn = 0; turn < quarterTurns; turn++) points = points.map(({ x, y }) => ({ x: -y, y: x }));
  const sorted = (list: readonly Point[]) => {
    const x0 = Math.min(...list.map(({ x }) => x));
    const y0 = Math.min(...list.map(({ y }) => y));
    return list
      .map(({ x, y }) => `${x - x0} ${y - y0}`)
      .sort()
      .join();
  };
  const target = [...outline.outer, ...outline.holes.flat()];
  return sorted(points) === sorted(target) && polygonArea(outline) === polygonArea(panel);
}

function sharedArea(a: Polygon, b: Polygon): number {
  const rings = (polygon: Polygon) =>
    [polygon.outer, ...polygon.holes].map((points) => points.map(({ x, y }): [number, number] => [x, y]));
  return polyclipIntersection([rings(a)], [rings(b)]).reduce(
    (sum, [outer, ...holes]) =>
      sum + Math.abs(shoelace(outer!)) - holes.reduce((h, r) => h + Math.abs(shoelace(r)), 0),
    0,
  );
}

function shoelace(points: readonly (readonly [number, number])[]): number {
  let sum = 0;
  points.forEach(([x, y], i) => {
    const [u, v] = points[(i + 1) % points.length]!;
    sum += x * v - u * y;
  });
  return sum / 2;
}

/** Shortest distance between the boundaries of two shapes. */
export function distanceBetween(a: Polygon, b: Polygon): number {
  const edges = (polygon: Polygon) =>
    [polygon.outer, ...polygon.holes].flatMap((points) =>
      points.map((point, i) => [point, points[(i + 1) % points.length]!] as const),
    );
  let least = Infinity;
  for (const [p, q] of edges(a)) {
    for (const [r, s] of edges(b)) {
      least = Math.min(least, toSegment(p, r, s), toSegment(q, r, s), toSegment(r, p, q), toSegment(s, p, q));
    }
  }
  return least;
}

function toSegment(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.max(0, Math.min(1, ((point.x - a.x) * dx + (point.y - a.y) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(point.x - a.x - t * dx, point.y - a.y - t * dy);
}

/** Edges of placed panels that neither the stock sheet's edge nor a cut, on this bank of its kerf or the other, makes. */
function untracedEdges(sheet: PlannedSheet, usable: Box, kerf: number): string[] {
  const faults: string[] = [];
  for (const { mark, outline } of sheet.placements) {
    for (const points of [outline.outer, ...outline.holes]) {
      points.forEach((a, i) => {
        const b = points[(i + 1) % points.length]!;
        if (!isTraced(a, b, sheet, usable, kerf)) faults.push(`no cut makes an edge of ${mark}.`);
      });
    }
  }
  return faults;
}

function isTraced(a: Point, b: Point, sheet: PlannedSheet, usable: Box, kerf: number): boolean {
  if (a.x === b.x && (a.x === usable.left || a.x === usable.right)) return true;
  if (a.y === b.y && (a.y === usable.bottom || a.y === usable.top)) return true;
  if (a.x !== b.x && a.y !== b.y) {
    return sheet.cuts.some(
      ({ from, to }) =>
        (from.x === a.x && from.y === a.y && to.x === b.x && to.y === b.y) ||
        (from.x === b.x && from.y === b.y && to.x === a.x && to.y === a.y),
    );
  }
  const [along, across] = a.x === b.x ? (['y', 'x'] as const) : (['x', 'y'] as const);
  const stretches = sheet.cuts
    .filter(({ from, to }) => from[across] === to[across] && Math.abs(from[across] - a[across]) <= kerf)
    .map(({ from, to }) => [Math.min(from[along], to[along]), Math.max(from[along], to[along])] as const)
    .sort((p, q) => p[0] - q[0]);
  // A kerf that crosses takes the last bit of an edge away.
  let reach = Math.min(a[along], b[along]);
  for (const [from, to] of stretches) if (from <= reach + kerf) reach = Math.max(reach, to);
  return reach + kerf >= Math.max(a[along], b[along]);
}
