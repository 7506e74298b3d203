import { createHash } from 'node:crypto';
import { countStockSheets } from '../../core/cutting/count-stock-sheets';
import { difference } from '../../core/geometry/clip';
import { boxOf, rectangle, type Polygon } from '../../core/geometry/polygon';
import type { StockSheet } from '../../core/job/schema';
import { layOutZone } from '../../core/panels/lay-out';
import type { ZoneLayout } from '../../core/panels/panel';
import { toHundredth } from '../../core/units';
import type { ZoneArea } from '../../core/zones/zone-area';

const stock: StockSheet = {
  id: 'S1',
  name: '',
  width: 500,
  height: 500,
  thickness: 0.5,
  price: 0,
  hasFace: false,
  spares: 0,
};

/** Prints medians of best-start searches and a checksum of what they found. */
export async function panelsBench(): Promise<void> {
  const wall = zone(4000, 2500, 8, seeded(7));
  report('40-panel wall, 8 openings, best start', 9, () => [lay(wall)]);

  const random = seeded(120);
  const walls = Array.from({ length: 120 }, () =>
    zone(
      2400 + Math.floor(random() * 1200),
      2000 + Math.floor(random() * 600),
      Math.floor(random() * 6),
      random,
    ),
  );
  report('120 walls, best start each', 3, () => walls.map(lay));

  const slope = zone(4000, 2500, 4, seeded(9), [
    { x: 0, y: 0 },
    { x: 400000, y: 0 },
    { x: 400000, y: 120000 },
    { x: 0, y: 250000 },
  ]);
  report('40-panel wall under a sloping ceiling, 4 openings, best start', 5, () => [lay(slope)]);

  const hall = zone(50_000, 50_000, 30, seeded(11));
  report('10,000-panel hall, best start, not exhaustive', 1, () => [lay(hall)]);
}

function lay(area: ZoneArea): ZoneLayout {
  return layOutZone({
    wallId: 'A',
    area,
    stock: [stock],
    countStockSheets: (cut) => countStockSheets(cut, { width: 50000, height: 50000 }, 'edge-to-edge', 0),
  });
}

function report(name: string, runs: number, work: () => ZoneLayout[]): void {
  const times: number[] = [];
  let found: ZoneLayout[] = [];
  for (let run = 0; run < runs; run++) {
    const before = performance.now();
    found = work();
    times.push(performance.now() - before);
  }
  const median = times.sort((a, b) => a - b)[runs >> 1]!;
  const answer = found.map(({ start, panels }) => `${start.x},${start.y},${panels.length}`).join(' ');
  const panels = found.reduce((sum, layout) => sum + layout.panels.length, 0);
  const starts = found.reduce((sum, layout) => sum + layout.considered, 0);
  const checksum = createHash('sha256').update(answer).digest('hex').slice(0, 8);
  console.log(
    `panels  ${name}: ${median.toFixed(1)} ms, ${panels} panels, ${starts} starts, checksum ${checksum}`,
  );
}

/** A zone with openings and fittings of ordinary sizes at random places on whole millimetres. */
function zone(
  width: number,
  height: number,
  openings: number,
  random: () => number,
  outline?: Polygon['outer'],
) {
  const whole = (from: number, to: number) => Math.floor(from + random() * (to - from));
  const shape = outline
    ? { outer: outline, holes: [] }
    : rectangle(0, 0, toHundredth(width), toHundredth(height));
  const holes = Array.from({ length: openings }, () => {
    const isFitting = random() < 0.6;
    const [w, h] = isFitting ? [whole(80, 300), whole(80, 160)] : [whole(600, 1200), whole(500, 1300)];
    return rectangle(
      toHundredth(whole(0, width - w)),
      toHundredth(whole(0, height - h)),
      toHundredth(w),
      toHundredth(h),
    );
  });
  const area: ZoneArea = {
    zone: {
      id: 'Z1',
      name: '',
      shape: [],
      holes: [],
      buildUp: 'steel-panel',
      layout: { stock: 'S1', start: 'best', turned: false, jointGap: 0, stagger: 0, leastWidth: 50 },
    },
    shape: { ring: shape.outer, arcs: [] },
    shapePolygon: shape,
    box: boxOf(shape.outer),
    area: difference([shape], ...holes.map((hole) => [hole])),
    boundaries: holes.map((polygon, i) => ({ cause: { kind: 'opening', id: `O${i + 1}` }, polygon })),
    findings: [],
  };
  return area;
}

/** Mulberry32: the same numbers everywhere. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let value = Math.imul(state ^ (state >>> 15), 1 | state);
    value = (value + Math.imul(value ^ (value >>> 7), 61 | value)) ^ value;
    return ((value ^ (value >>> 14)) >>> 0) / 4294967296;
  };
}
