import { createHash } from 'node:crypto';
import { countStockSheets } from '../../core/cutting/count-stock-sheets';
import { difference } from '../../core/geometry/clip';
import { boxOf, rectangle, type Polygon } from '../../core/geometry/polygon';
import type { StockSheet } from '../../core/job/schema';
import { demoJob } from '../../core/job/demo';
import { layOutZone, type LayoutRequest } from '../../core/panels/lay-out';
import type { ZoneLayout } from '../../core/panels/panel';
import { formatOf } from '../../core/run/stock-formats';
import { surveyWall } from '../../core/survey/survey';
import { toHundredth } from '../../core/units';
import type { ZoneArea } from '../../core/zones/zone-area';
import { zoneAreas } from '../../core/zones/zone-areas';
import { benchBruteForce, benchPlainWays } from './starts-bench';

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

/**
 * Prints medians of best-start searches, in processor time, and a checksum of what they found; then how they compare
 * with the plain ways and with every start of a raster.
 */
export async function panelsBench(): Promise<void> {
  for (const { name, work } of demoZones()) report(name, 25, () => [work()]);

  const wall = zone(4000, 2500, 8, seeded(7));
  report('wall of 4000 × 2500 mm, 8 openings, best start', 25, () => [lay(wall)]);

  const larger = zone(4500, 3000, 8, seeded(21));
  report('wall of 4500 × 3000 mm, 8 openings, best start', 25, () => [lay(larger)]);

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
  report('40-panel wall under a sloping ceiling, 4 openings, best start', 25, () => [lay(slope)]);

  const hall = zone(50_000, 50_000, 30, seeded(11));
  report('10,000-panel hall, best start, not exhaustive', 1, () => [lay(hall)]);

  benchPlainWays();
  benchBruteForce();
}

function lay(area: ZoneArea): ZoneLayout {
  return layOutZone({
    wallId: 'A',
    area,
    stock: [stock],
    countStockSheets: (cut) => countStockSheets(cut, { width: 50000, height: 50000 }, 'edge-to-edge', 0),
  });
}

/** Every zone of the demo job that asks for the best start. */
function demoZones(): { name: string; work: () => ZoneLayout }[] {
  const job = demoJob();
  const { method } = job.cutting;
  const kerf = toHundredth(job.cutting.kerf);
  return job.walls.flatMap((wall) =>
    zoneAreas(surveyWall(wall)).flatMap((area) => {
      const { layout, id } = area.zone;
      const steel = job.stock.find((entry) => entry.id === layout?.stock);
      if (!steel || layout?.start !== 'best') return [];
      const format = formatOf(job, steel);
      const request: LayoutRequest = {
        wallId: wall.id,
        area,
        stock: job.stock,
        kerf,
        countStockSheets: (cut) => countStockSheets(cut, format, method, kerf),
      };
      return [{ name: `demo, wall ${wall.id}, zone ${id}`, work: () => layOutZone(request) }];
    }),
  );
}

function report(name: string, runs: number, work: () => ZoneLayout[]): void {
  const times: number[] = [];
  let found: ZoneLayout[] = [];
  for (let run = 0; run < runs; run++) {
    const before = process.cpuUsage();
    found = work();
    const { user, system } = process.cpuUsage(before);
    times.push((user + system) / 1000);
  }
  const cold = times[0]!;
  const median = times.sort((a, b) => a - b)[runs >> 1]!;
  const answer = found.map(({ start, panels }) => `${start.x},${start.y},${panels.length}`).join(' ');
  const panels = found.reduce((sum, layout) => sum + layout.panels.length, 0);
  const capped = found.some(({ findings }) =>
    findings.some(({ code }) => code === 'best-start-not-exhaustive'),
  );
  const starts = found.reduce((sum, layout) => sum + layout.considered, 0);
  const checksum = createHash('sha256').update(answer).digest('hex').slice(0, 8);
  console.log(
    `panels  ${name}: ${median.toFixed(1)} ms (least ${times[0]!.toFixed(1)}, cold ${cold.toFixed(1)}), ` +
      `${panels} panels, ${starts} starts${capped ? ', not exhaustive' : ''}, checksum ${checksum}`,
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
