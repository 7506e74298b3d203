import { difference } from '../../core/geometry/clip';
import { boxOf, rectangle, type Polygon, type Region } from '../../core/geometry/polygon';
import type { Layout, StockSheet } from '../../core/job/schema';
import type { HandWish } from '../../core/panels/by-hand/hand-wishes';
import type { CountStockSheets } from '../../core/panels/cut-size';
import { layOutZone } from '../../core/panels/lay-out';
import type { ZoneLayout } from '../../core/panels/panel';
import { toHundredth } from '../../core/units';
import type { ZoneArea } from '../../core/zones/zone-area';

/** x, y, width, height in mm. */
export type MmRectangle = readonly [number, number, number, number];

export function stockSheet(width: number, height: number): StockSheet {
  return { id: 'S1', name: '', width, height, thickness: 0.5, price: 0, hasFace: false, spares: 0 };
}

export function layout(changes: Partial<Layout> = {}): Layout {
  return {
    stock: 'S1',
    start: 'lower-left',
    turned: false,
    jointGap: 0,
    stagger: 0,
    leastWidth: 50,
    ...changes,
  };
}

export function mmRectangle([x, y, width, height]: MmRectangle): Polygon {
  return rectangle(toHundredth(x), toHundredth(y), toHundredth(width), toHundredth(height));
}

export function mmPolygon(points: readonly (readonly [number, number])[]): Polygon {
  return { outer: points.map(([x, y]) => ({ x: toHundredth(x), y: toHundredth(y) })), holes: [] };
}

/** A zone whose area is its shape less openings, as the survey would hand it on. */
export function zoneArea(
  shape: Polygon,
  openings: readonly Polygon[],
  changes: Partial<Layout> = {},
): ZoneArea {
  const area: Region = difference([shape], ...openings.map((opening) => [opening]));
  return {
    zone: { id: 'Z1', name: '', shape: [], holes: [], buildUp: 'steel-panel', layout: layout(changes) },
    shape: { ring: shape.outer, arcs: [] },
    shapePolygon: shape,
    box: boxOf(shape.outer),
    area,
    boundaries: [
      ...openings.map((polygon, i) => ({ cause: { kind: 'opening', id: `O${i + 1}` } as const, polygon })),
      { cause: { kind: 'zone', id: 'Z1' } as const, polygon: shape },
    ],
    findings: [],
  };
}

/** A nest that is easy to follow by hand: rectangles by falling height on shelves, never turned. */
export function shelfCount(width: number, height: number): CountStockSheets {
  return (cut) => {
    const shelves: { y: number; height: number; x: number; sheet: number }[] = [];
    const used: number[] = [];
    const order = [...cut].sort((a, b) => b.height - a.height || b.width - a.width || b.area - a.area);
    for (const piece of order) {
      const shelf = shelves.find((one) => one.height >= piece.height && one.x + piece.width <= width);
      if (shelf) {
        shelf.x += piece.width;
        continue;
      }
      let sheet = used.findIndex((y) => y + piece.height <= height);
      if (sheet < 0) sheet = used.push(0) - 1;
      shelves.push({ y: used[sheet]!, height: piece.height, x: piece.width, sheet });
      used[sheet]! += piece.height;
    }
    return used.length;
  };
}

export function layOut(area: ZoneArea, stock: StockSheet, wishes?: readonly HandWish[]): ZoneLayout {
  const [width, height] = [toHundredth(stock.width), toHundredth(stock.height)];
  const countStockSheets = shelfCount(width, height);
  return layOutZone({ wallId: 'A', area, stock: [stock], countStockSheets, ...(wishes && { wishes }) });
}
