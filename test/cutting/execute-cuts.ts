import { boxOf, locate, polygonArea, type Box, type Point, type Polygon } from '../../core/geometry/polygon';
import type { Cut, PlannedSheet } from '../../core/cutting/plan';
import { distanceBetween } from './verify-plan';

/*
 * Cuts a planned stock sheet up, cut after cut, and sees whether the panels come out. A cut's line is the left or
 * lower bank of its kerf.
 */

/**
 * @param usable the stock sheet, its margins cut off
 * @returns what went wrong; [] if every cut ran right across its piece and every panel came out
 */
export function executeCuts(sheet: PlannedSheet, usable: Box, kerf: number): string[] {
  const faults: string[] = [];
  const panels = new Map(sheet.placements.map((placement) => [placement.mark, placement.outline]));
  let pieces: Box[] = [usable];
  const opened = new Set<string>();
  const parted = new Set<string>();
  for (const cut of sheet.cuts) {
    if (cut.opens !== undefined) {
      if (opened.has(cut.opens)) continue;
      opened.add(cut.opens);
      const outline = panels.get(cut.opens);
      if (!outline) {
        faults.push(`${cut.opens} is opened but does not lie here.`);
        continue;
      }
      const box = boxOf(outline.outer);
      if (!pieces.some((piece) => isSame(piece, box))) {
        faults.push(`${cut.opens} is opened before its rectangle has been cut out.`);
      }
      const own = sheet.cuts.filter(({ opens }) => opens === cut.opens);
      faults.push(...unopenedEdges(cut.opens, outline, own));
      pieces = [...pieces.filter((piece) => !isSame(piece, box)), ...waste(outline, box, own, kerf)];
      continue;
    }
    if (cut.from.x !== cut.to.x && cut.from.y !== cut.to.y) {
      const pair = partPair(pieces, cut, panels, kerf);
      if (!pair) faults.push(`the cut ${show(cut)} parts no two panels in their rectangle.`);
      else {
        pieces = pieces.filter((piece) => piece !== pair.piece);
        for (const mark of pair.marks) parted.add(mark);
      }
      continue;
    }
    const rest = partAll(pieces, cut, kerf);
    if (rest) pieces = rest;
    else faults.push(`the cut ${show(cut)} does not run right across a piece.`);
  }
  for (const [mark, outline] of panels) {
    const box = boxOf(outline.outer);
    const isRectangle = polygonArea(outline) === (box.right - box.left) * (box.top - box.bottom);
    if (parted.has(mark)) continue;
    if (isRectangle ? !pieces.some((piece) => isSame(piece, box)) : !opened.has(mark)) {
      faults.push(`${mark} has not come out.`);
    }
  }
  for (const { x, y, width, height } of sheet.offcuts) {
    const box = { left: x, bottom: y, right: x + width, top: y + height };
    if (!pieces.some((piece) => isSame(piece, box)))
      faults.push(`an offcut ${width} × ${height} has not come out.`);
  }
  return faults;
}

/** A slanted cut from side to side of a piece may turn out unevenly by so many hundredths, as its panels are rounded. */
const UNEVEN = 5;

/** The piece that a slanted cut runs right across, and the two panels that it leaves there, both finished. */
function partPair(
  pieces: readonly Box[],
  { from, to }: Cut,
  panels: ReadonlyMap<string, Polygon>,
  kerf: number,
): { piece: Box; marks: string[] } | null {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const distance = ({ x, y }: Point) =>
    Math.abs((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / length;
  for (const piece of pieces) {
    const onSide = ({ x, y }: Point) =>
      x >= piece.left &&
      x <= piece.right &&
      y >= piece.bottom &&
      y <= piece.top &&
      (x === piece.left || x === piece.right || y === piece.bottom || y === piece.top);
    if (!onSide(from) || !onSide(to)) continue;
    const inside = [...panels].filter(([, { outer }]) => outer.every(onSide));
    const slants = inside.map(([, { outer }]) =>
      outer.flatMap((a, i) => {
        const b = outer[(i + 1) % outer.length]!;
        return a.x === b.x || a.y === b.y ? [] : [[distance(a), distance(b)] as const];
      }),
    );
    if (inside.length !== 2 || slants.some((own) => own.length !== 1)) continue;
    const [near, far] = slants.map((own) => own[0]!).sort((p, q) => p[0] + p[1] - q[0] - q[1]);
    const isNear = near!.every((gap) => gap === 0);
    const isFar = far!.every((gap) => gap >= kerf - 1e-6 && gap <= kerf + UNEVEN);
    if (isNear && isFar) return { piece, marks: inside.map(([mark]) => mark) };
  }
  return null;
}

function show({ from, to }: Cut): string {
  return `${from.x},${from.y} – ${to.x},${to.y}`;
}

function isSame(a: Box, b: Box): boolean {
  return a.left === b.left && a.bottom === b.bottom && a.right === b.right && a.top === b.top;
}

function partAll(pieces: readonly Box[], { from, to }: Cut, kerf: number): Box[] | null {
  for (const [i, piece] of pieces.entries()) {
    const { left, bottom, right, top } = piece;
    const parts: Box[] = [];
    if (from.x === to.x && left < from.x && from.x < right && from.y === bottom && to.y === top) {
      parts.push({ left, bottom, right: from.x, top });
      if (from.x + kerf < right) parts.push({ left: from.x + kerf, bottom, right, top });
    } else if (from.y === to.y && bottom < from.y && from.y < top && from.x === left && to.x === right) {
      parts.push({ left, bottom, right, top: from.y });
      if (from.y + kerf < top) parts.push({ left, bottom: from.y + kerf, right, top });
    } else continue;
    return [...pieces.slice(0, i), ...pieces.slice(i + 1), ...parts];
  }
  return null;
}

/** Edges of the outline inside its box that no opening cut follows. */
function unopenedEdges(mark: string, outline: Polygon, cuts: readonly Cut[]): string[] {
  const box = boxOf(outline.outer);
  const same = (p: Point, q: Point) => p.x === q.x && p.y === q.y;
  return [outline.outer, ...outline.holes].flatMap((points) =>
    points.flatMap((a, i) => {
      const b = points[(i + 1) % points.length]!;
      if (a.x === b.x && (a.x === box.left || a.x === box.right)) return [];
      if (a.y === b.y && (a.y === box.bottom || a.y === box.top)) return [];
      const isCut = cuts.some(
        ({ from, to }) => (same(from, a) && same(to, b)) || (same(from, b) && same(to, a)),
      );
      return isCut ? [] : [`an edge of ${mark} is not opened.`];
    }),
  );
}

/**
 * The rectangles that fall out of a panel's box once it is opened: areas a kerf away from the panel, bounded by
 * that, by the box and by opening cuts. Found by flooding the cells of the grid through all corners.
 */
function waste(outline: Polygon, box: Box, cuts: readonly Cut[], kerf: number): Box[] {
  const grid = (axis: 'x' | 'y', low: number, high: number) => {
    const values = new Set([low, high]);
    for (const { from, to } of cuts) {
      for (const value of [from[axis], to[axis]]) {
        for (const line of [value - kerf, value, value + kerf])
          if (line > low && line < high) values.add(line);
      }
    }
    return [...values].sort((a, b) => a - b);
  };
  const xs = grid('x', box.left, box.right);
  const ys = grid('y', box.bottom, box.top);
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const cell = (i: number, j: number): Box => ({
    left: xs[i]!,
    bottom: ys[j]!,
    right: xs[i + 1]!,
    top: ys[j + 1]!,
  });
  const isFree = Array.from({ length: columns * rows }, (_, n) => {
    const { left, bottom, right, top } = cell(n % columns, Math.floor(n / columns));
    const corners = [
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top },
    ];
    // Half of the middle decides for cells that a rectilinear outline borders; the distance for all others.
    const middle = { x: (left + right) / 2, y: (bottom + top) / 2 };
    if (locate(middle, outline) === 'inside') return false;
    if (kerf === 0) return !crosses(corners, outline);
    return distanceBetween({ outer: corners, holes: [] }, outline) >= kerf;
  });
  const barred = (vertical: boolean, at: number, low: number, high: number) =>
    cuts.some(({ from, to }) =>
      vertical
        ? from.x === at && to.x === at && Math.min(from.y, to.y) <= low && Math.max(from.y, to.y) >= high
        : from.y === at && to.y === at && Math.min(from.x, to.x) <= low && Math.max(from.x, to.x) >= high,
    );
  const seen = new Set<number>();
  const found: Box[] = [];
  for (let start = 0; start < isFree.length; start++) {
    if (!isFree[start] || seen.has(start)) continue;
    const stack = [start];
    seen.add(start);
    const members: number[] = [];
    while (stack.length > 0) {
      const n = stack.pop()!;
      members.push(n);
      const [i, j] = [n % columns, Math.floor(n / columns)];
      const { left, bottom, right, top } = cell(i, j);
      const go = (next: number, inside: boolean, isBarred: boolean) => {
        if (!inside || isBarred || seen.has(next) || !isFree[next]) return;
        seen.add(next);
        stack.push(next);
      };
      go(n + 1, i + 1 < columns, barred(true, right, bottom, top));
      go(n - 1, i > 0, barred(true, left, bottom, top));
      go(n + columns, j + 1 < rows, barred(false, top, left, right));
      go(n - columns, j > 0, barred(false, bottom, left, right));
    }
    const boxes = members.map((n) => cell(n % columns, Math.floor(n / columns)));
    const hull: Box = {
      left: Math.min(...boxes.map(({ left }) => left)),
      bottom: Math.min(...boxes.map(({ bottom }) => bottom)),
      right: Math.max(...boxes.map(({ right }) => right)),
      top: Math.max(...boxes.map(({ top }) => top)),
    };
    const area = boxes.reduce((sum, b) => sum + (b.right - b.left) * (b.top - b.bottom), 0);
    if (area === (hull.right - hull.left) * (hull.top - hull.bottom)) found.push(hull);
  }
  return found;
}

/** Whether the outline runs through the inside of the rectangle. */
function crosses(corners: readonly Point[], outline: Polygon): boolean {
  const [a, , c] = corners as [Point, Point, Point, Point];
  return [outline.outer, ...outline.holes].some((points) =>
    points.some((p, i) => {
      const q = points[(i + 1) % points.length]!;
      // Liang–Barsky: the stretch of the edge inside the open rectangle.
      let [t0, t1] = [0, 1];
      for (const [d, low, high] of [
        [q.x - p.x, a.x - p.x, c.x - p.x],
        [q.y - p.y, a.y - p.y, c.y - p.y],
      ] as const) {
        if (d === 0) {
          if (low >= 0 || high <= 0) return false;
        } else {
          t0 = Math.max(t0, Math.min(low / d, high / d));
          t1 = Math.min(t1, Math.max(low / d, high / d));
        }
      }
      return t1 - t0 > 1e-9;
    }),
  );
}
