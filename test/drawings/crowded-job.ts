import { readJob } from '../../core/job/read';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';

/** A job as plain data, read as a file would be, and worked out with one cutting step. */
export function workedOutOf(job: object): WorkedOut {
  const read = readJob(JSON.stringify(job));
  if (!('job' in read) || !read.job) throw new Error(JSON.stringify(read));
  return workOutFully(read.job, { steps: 1 });
}

const box = (x: number, y: number, width: number, height: number) => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

const kinds = ['socket', 'switch', 'light', 'thermostat', 'pipe', 'radiator', 'beam-end', 'free'];

/** A wall with a door and so many fittings, scattered by a generator of Lehmer's kind; may lie on each other. */
export function crowdedWall(
  id: string,
  width: number,
  height: number,
  fittings: number,
  zones: object[],
  seed = 7,
) {
  let state = seed;
  const next = (most: number) => {
    state = (state * 48271) % 2147483647;
    return state % most;
  };
  return {
    id,
    name: 'Crowded',
    outline: box(0, 0, width, height),
    openings: [
      { id: 'D1', kind: 'door', x: 300, y: 0, width: 926, height: 2040, clearance: 60, hinge: 'left' },
    ],
    fittings: Array.from({ length: fittings }, (_, i) => {
      const kind = kinds[next(kinds.length)]!;
      const x = 1400 + next(width - 1700);
      const y = 200 + next(height - 500);
      return kind === 'pipe'
        ? { id: `F${i + 1}`, kind, circle: { x, y, diameter: 40 }, clearance: 10 }
        : { id: `F${i + 1}`, kind, x, y, width: kind === 'socket' ? 146 : 86, height: 86, clearance: 5 };
    }),
    zones,
  };
}

export function zone(id: string, x: number, y: number, width: number, height: number, layout: object) {
  return { id, name: 'Board', shape: box(x, y, width, height), buildUp: 'steel-panel', layout };
}

export function jobOf(walls: object[]) {
  return {
    format: 'lodeplan-job',
    version: 1,
    name: 'Crowded walls',
    client: 'Őrség Műhely',
    reference: 'CW-1',
    revision: 'C',
    date: '2026-05-04',
    stock: [
      { id: 'S1', name: 'Half metre', width: 500, height: 500, thickness: 0.5, price: 6.4 },
      { id: 'S2', name: 'Small', width: 300, height: 200, thickness: 0.5, price: 2.4 },
    ],
    walls,
  };
}
