import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle, type Polygon } from '../../core/geometry/polygon';
import { kindsOf } from '../../core/cutting/kinds';
import { strongerBounds } from '../../core/cutting/bounds/stronger-bounds';
import { boundsOf, type Bounds } from '../../core/cutting/lower-bound';
import type { CuttingTask } from '../../core/cutting/plan';
import { canBeCut, type Squares, type UnitPanel, type UnitSheet } from './exhaustive';
import { canBeCutEdgeToEdge } from './exhaustive-edge-to-edge';

/*
 * The bound against certainty: for thousands of tiny tasks every way of cutting with less than the bound is
 * tried, and none succeeds. One unit is 10 mm; where there is a kerf it is one unit, and the exhaustive search
 * sees panels and sheets half a unit larger all round.
 */
const unit = 1000;

interface Piece {
  readonly width: number;
  readonly height: number;
  /** Width and height of the corner that is missing; 0 × 0 for a rectangle. */
  readonly notch: readonly [number, number];
  readonly stock: readonly string[];
}

const side = fc.integer({ min: 1, max: 5 });
const sheetSide = fc.integer({ min: 3, max: 6 });
const piece = (stocks: readonly (readonly string[])[], notched: boolean) =>
  fc
    .record({ width: side, height: side, cut: fc.tuple(side, side), stock: fc.constantFrom(...stocks) })
    .map(({ width, height, cut, stock }): Piece => {
      const isNotched = notched && cut[0] < width && cut[1] < height;
      return { width, height, notch: isNotched ? cut : [0, 0], stock };
    });

function outlineOf({ width: w, height: h, notch: [x, y] }: Piece): Polygon {
  if (x === 0) return rectangle(0, 0, w * unit, h * unit);
  const corners = [
    [0, 0],
    [w, 0],
    [w, h - y],
    [w - x, h - y],
    [w - x, h],
    [0, h],
  ];
  return { outer: corners.map(([px, py]) => ({ x: px! * unit, y: py! * unit })), holes: [] };
}

function squaresOf({ width, height, notch: [x, y] }: Piece, kerf: number): Squares {
  const squares: [number, number][] = [];
  for (let i = 0; i < width; i++) {
    for (let j = 0; j < height; j++) if (x === 0 || i < width - x || j < height - y) squares.push([i, j]);
  }
  return kerf === 0 ? squares : widened(squares);
}

/** In squares of half the side, half a kerf added all round. */
function widened(squares: Squares): Squares {
  const cells = new Map<string, readonly [number, number]>();
  for (const [x, y] of squares) {
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) cells.set(`${2 * x + i},${2 * y + j}`, [2 * x + i, 2 * y + j]);
  }
  return [...cells.values()];
}

interface Tiny {
  readonly pieces: readonly Piece[];
  readonly sheets: readonly (UnitSheet & { readonly price: number; readonly available?: number })[];
  readonly rack: readonly UnitSheet[];
  readonly kerf: 0 | 1;
  readonly method: 'free' | 'edge-to-edge';
}

function fits({ width, height, stock }: Piece, sheets: Tiny['sheets']): boolean {
  return sheets.some(
    (sheet) =>
      stock.includes(sheet.stock) &&
      ((width <= sheet.width && height <= sheet.height) || (height <= sheet.width && width <= sheet.height)),
  );
}

function boundsOfTiny({ pieces, sheets, rack, kerf, method }: Tiny) {
  const scale = <T extends { width: number; height: number }>(size: T) => ({
    ...size,
    width: size.width * unit,
    height: size.height * unit,
  });
  const task: CuttingTask = {
    panels: pieces.map((p, i) => ({ mark: `P${i}`, stock: p.stock, outline: outlineOf(p) })),
    stock: sheets.map((sheet) => ({ ...scale(sheet), id: sheet.stock, hasFace: false })),
    rack: rack.map((sheet, i) => ({ ...scale(sheet), id: `R${i}` })),
    method,
    kerf: kerf * unit,
    leastOffcut: [unit, unit],
  };
  const kinds = kindsOf(task);
  const plan = { newSheets: pieces.length, cost: 1e6 };
  const quick = boundsOf(task, kinds, plan);
  let bounds: Bounds = { newSheets: 0, cost: 0 };
  for (const better of strongerBounds(task, kinds, plan)) {
    expect(better.newSheets).toBeGreaterThanOrEqual(bounds.newSheets);
    expect(better.cost).toBeGreaterThanOrEqual(bounds.cost);
    bounds = better;
  }
  expect(bounds.newSheets).toBeGreaterThanOrEqual(quick.newSheets);
  expect(bounds.cost).toBeGreaterThanOrEqual(quick.cost);
  if (bounds.newSheets > quick.newSheets || bounds.cost > quick.cost) stronger++;
  return bounds;
}

/** Tasks of which the stronger bounds say more than the quick ones. */
let stronger = 0;

function unitPanels({ pieces, kerf }: Tiny): UnitPanel[] {
  return pieces.map((p) => ({ squares: squaresOf(p, kerf), stock: p.stock }));
}

const grown = <T extends UnitSheet>(sheet: T, kerf: number): T => ({
  ...sheet,
  width: kerf === 0 ? sheet.width : 2 * sheet.width + 2,
  height: kerf === 0 ? sheet.height : 2 * sheet.height + 2,
});

function canBeCutFrom(tiny: Tiny, sheets: readonly UnitSheet[]): boolean {
  const { pieces, kerf, method } = tiny;
  if (method === 'edge-to-edge') return canBeCutEdgeToEdge(pieces, sheets, kerf);
  return canBeCut(
    unitPanels(tiny),
    sheets.map((sheet) => grown(sheet, kerf)),
  );
}

const rackOf = (stocks: readonly string[]) =>
  fc.array(fc.record({ width: side, height: side, stock: fc.constantFrom(...stocks) }), { maxLength: 2 });

describe('no plan undercuts the bound (exhaustive search)', () => {
  test('one stock format, notches, rack, kerf', () => {
    const tight = { free: 0, 'edge-to-edge': 0 };
    fc.assert(
      fc.property(
        fc.record({
          pieces: fc.array(piece([['S']], true), { minLength: 1, maxLength: 6 }),
          sheet: fc.record({ width: sheetSide, height: sheetSide }),
          rack: rackOf(['S']),
          kerf: fc.constantFrom<0 | 1>(0, 1),
          method: fc.constantFrom('free' as const, 'edge-to-edge' as const),
        }),
        ({ pieces, sheet, rack, kerf, method }) => {
          const sheets = [{ ...sheet, stock: 'S', price: 7 }];
          const tiny: Tiny = {
            // With a kerf every square counts four times: there only a few panels can be tried.
            pieces: pieces.filter((p) => fits(p, sheets)).slice(0, kerf ? 3 : 6),
            sheets,
            rack,
            kerf,
            method,
          };
          const bounds = boundsOfTiny(tiny);
          expect(bounds.cost).toBe(7 * bounds.newSheets);
          if (bounds.newSheets === 0) return;
          const isEnough = (newSheets: number) =>
            canBeCutFrom(tiny, [...rack, ...Array.from({ length: newSheets }, () => sheets[0]!)]);
          expect(isEnough(bounds.newSheets - 1)).toBe(false);
          if (bounds.newSheets > 1 && isEnough(bounds.newSheets)) tight[method]++;
        },
      ),
      { numRuns: 900, seed: 3 },
    );
    // The bound is no mere formality: mostly it is the answer.
    expect(tight.free).toBeGreaterThan(100);
    expect(tight['edge-to-edge']).toBeGreaterThan(100);
    expect(stronger).toBeGreaterThan(0);
  });

  test('two stock formats at different prices', () => {
    fc.assert(
      fc.property(
        fc.record({
          pieces: fc.array(piece([['S'], ['T'], ['S', 'T']], true), { minLength: 1, maxLength: 5 }),
          method: fc.constantFrom('free' as const, 'edge-to-edge' as const),
          sizes: fc.tuple(sheetSide, sheetSide, sheetSide, sheetSide),
          prices: fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })),
          available: fc.constantFrom(undefined, undefined, 1, 2),
          rack: rackOf(['S', 'T']),
        }),
        ({ pieces, method, sizes, prices, available, rack }) => {
          const sheets = [
            {
              stock: 'S',
              width: sizes[0],
              height: sizes[1],
              price: prices[0],
              ...(available && { available }),
            },
            { stock: 'T', width: sizes[2], height: sizes[3], price: prices[1] },
          ];
          const tiny: Tiny = {
            pieces: pieces.filter((p) => fits(p, sheets)),
            sheets,
            rack,
            kerf: 0,
            method,
          };
          const bounds = boundsOfTiny(tiny);
          for (let s = 0; s <= Math.min(tiny.pieces.length, available ?? Infinity); s++) {
            for (let t = 0; s + t <= tiny.pieces.length; t++) {
              if (s + t >= bounds.newSheets && s * prices[0] + t * prices[1] >= bounds.cost) continue;
              const bought = [
                ...Array.from({ length: s }, () => sheets[0]!),
                ...Array.from({ length: t }, () => sheets[1]!),
              ];
              expect(canBeCutFrom(tiny, [...rack, ...bought])).toBe(false);
            }
          }
        },
      ),
      { numRuns: 1000, seed: 4 },
    );
  });
});
