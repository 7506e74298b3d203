import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';

/**
 * Seeded jobs for benchmarks: classroom walls with a door or window, sockets and switches in and around one steel zone
 * of 500 × 500 stock sheets. Invented data.
 */
export function schoolJob(walls: number, seed = 7): Job {
  const random = randomOf(seed);
  return jobOf(
    Array.from({ length: walls }, (_, i) => {
      const width = steps(random, 4200, 7800, 100);
      const height = steps(random, 2600, 3200, 50);
      const zone = {
        x: steps(random, 300, 900, 10),
        y: steps(random, 600, 900, 10),
        width: steps(random, 2600, 3400, 10),
        height: steps(random, 1700, 2000, 10),
      };
      return wallOf(`W${i + 1}`, width, height, zone, [
        {
          id: 'D1',
          kind: 'door',
          x: Math.min(width - 1000, zone.x + steps(random, 1400, 2600, 10)),
          y: 0,
          width: 926,
          height: 2040,
          clearance: 60,
        },
        ...sockets(random, zone, 3),
      ]);
    }),
  );
}

/** One wall with about `panels` panels and `fittings` openings and fittings in its zone. */
export function singleWallJob(panels: number, fittings: number, seed = 3): Job {
  const random = randomOf(seed);
  const rows = Math.max(1, Math.round(Math.sqrt(panels / 2.5)));
  const zone = { x: 410, y: 370, width: Math.round(panels / rows) * 500 - 130, height: rows * 500 - 170 };
  const wall = wallOf('A', zone.width + 900, zone.height + 800, zone, sockets(random, zone, fittings));
  return jobOf([wall]);
}

/** mulberry32: public-domain 32-bit generator by Tommy Ettinger, as commonly reproduced. */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

interface PlacedBox extends Box {
  readonly id: string;
  readonly kind: string;
  readonly clearance: number;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function steps(random: () => number, least: number, greatest: number, step: number): number {
  return least + Math.floor(random() * ((greatest - least) / step + 1)) * step;
}

function sockets(random: () => number, zone: Box, count: number): PlacedBox[] {
  const columns = Math.ceil(Math.sqrt(count * 2));
  return Array.from({ length: count }, (_, i) => ({
    id: `K${i + 1}`,
    kind: 'socket',
    x: Math.round(zone.x + ((i % columns) + 0.2 + 0.5 * random()) * (zone.width / columns)),
    y: Math.round(
      zone.y + (Math.floor(i / columns) + 0.2 + 0.5 * random()) * (zone.height / Math.ceil(count / columns)),
    ),
    width: 146,
    height: 86,
    clearance: 5,
  }));
}

function wallOf(id: string, width: number, height: number, zone: Box, objects: PlacedBox[]) {
  const { x, y } = zone;
  const right = x + zone.width;
  const top = y + zone.height;
  return {
    id,
    name: `Classroom wall ${id}`,
    outline: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    openings: objects.filter(({ kind }) => kind === 'door'),
    fittings: objects.filter(({ kind }) => kind !== 'door'),
    zones: [
      {
        id: 'Z1',
        name: 'Board',
        shape: [
          [x, y],
          [right, y],
          [right, top],
          [x, top],
        ],
        buildUp: 'steel-panel',
        layout: { stock: 'S1', start: 'best', leastWidth: 50 },
      },
    ],
  };
}

function jobOf(walls: unknown[]): Job {
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Generated school',
    stock: [{ id: 'S1', name: 'Steel 500 × 500 × 0.5', width: 500, height: 500, thickness: 0.5, price: 6.4 }],
    cutting: { method: 'edge-to-edge', kerf: 0, leastOffcut: [100, 100] },
    walls,
  });
  if (!job) throw new Error(findings.map(({ text }) => text).join('\n'));
  return job;
}
