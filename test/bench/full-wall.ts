import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { randomOf } from './generated-jobs';

/** Something on the full wall that can be dragged: where it is and at which station. */
export interface Grip {
  readonly title: string;
  readonly station: 'Survey' | 'Zones' | 'Panels';
  readonly at: readonly [number, number];
}

const zones = 5;
const [columns, rows] = [10, 10];
const sheet = 300;
const zoneWidth = columns * sheet;
const pitch = zoneWidth + 200;

/** A wall of 500 panels in five zones, with 60 sockets and a door. Seeded; invented data. */
export function fullWallJob(): { readonly job: Job; readonly grips: readonly Grip[] } {
  const random = randomOf(11);
  const width = zones * pitch + 1400;
  const height = rows * sheet + 900;
  const fittings = Array.from({ length: 60 }, (_, i) => ({
    id: `K${i + 1}`,
    kind: 'socket',
    x: Math.round(300 + ((i % 20) + 0.6 * random()) * ((width - 1700) / 20)),
    y: Math.round(450 + (Math.floor(i / 20) + 0.6 * random()) * (height / 3.4)),
    width: 146,
    height: 86,
    clearance: 5,
  }));
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Full wall',
    stock: [
      { id: 'S1', name: 'Steel 300 × 300 × 0.5', width: sheet, height: sheet, thickness: 0.5, price: 3 },
    ],
    walls: [
      {
        id: 'A',
        name: 'Board wall',
        outline: [
          [0, 0],
          [width, 0],
          [width, height],
          [0, height],
        ],
        openings: [
          { id: 'D1', kind: 'door', x: width - 1200, y: 0, width: 926, height: 2040, clearance: 60 },
        ],
        fittings,
        zones: Array.from({ length: zones }, (_, i) => {
          const [left, foot] = [300 + i * pitch, 400];
          const [right, top] = [left + zoneWidth - 130, foot + rows * sheet - 110];
          return {
            id: `Z${i + 1}`,
            name: `Board ${i + 1}`,
            shape: [
              [left, foot],
              [right, foot],
              [right, top],
              [left, top],
            ],
            buildUp: 'steel-panel',
            layout: { stock: 'S1', start: 'best', leastWidth: 50 },
          };
        }),
      },
    ],
  });
  if (!job) throw new Error(findings.map(({ text }) => text).join('\n'));
  const socket = job.walls[0]!.fittings[28]!;
  const middle: [number, number] = [(socket.x ?? 0) + 73, (socket.y ?? 0) + 43];
  return {
    job,
    grips: [
      { title: 'socket at Survey', station: 'Survey', at: middle },
      { title: 'door at Survey', station: 'Survey', at: [width - 700, 1000] },
      { title: 'corner of the wall at Survey', station: 'Survey', at: [width, height] },
      { title: 'zone at Zones', station: 'Zones', at: [300 + 2 * pitch + 40, 430] },
      { title: 'socket at Zones', station: 'Zones', at: middle },
      { title: 'socket at Panels', station: 'Panels', at: middle },
    ],
  };
}
