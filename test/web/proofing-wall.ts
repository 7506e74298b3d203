import { readJobObject } from '../../core/job/read';
import { findWall } from '../../core/job/shape';

/** A job of one wall with a door, a socket in a steel zone, an arch and a round pipe. */
export const smallJob = readJobObject({
  format: 'lodeplan-job',
  version: 1,
  name: 'Small',
  stock: [{ id: 'S1', width: 500, height: 500 }],
  walls: [
    {
      id: 'A',
      outline: [
        [0, 0],
        [8000, 0],
        [8000, 2140],
        [6500, 2700],
        [0, 2700],
      ],
      openings: [
        { id: 'D1', kind: 'door', x: 220, y: 0, width: 926, height: 2040, clearance: 60 },
        {
          id: 'A1',
          kind: 'arch',
          shape: [[5000, 0], [6200, 0], [6200, 1750], { arcTo: [5000, 1750], via: [5600, 2350] }],
        },
      ],
      fittings: [
        { id: 'K4', kind: 'socket', x: 2267, y: 1157, width: 146, height: 86 },
        { id: 'P1', kind: 'pipe', circle: { x: 4000, y: 200, diameter: 40 } },
      ],
      zones: [
        {
          id: 'Z1',
          shape: [
            [1420, 700],
            [3420, 700],
            [3420, 2450],
            [1420, 2450],
          ],
          buildUp: 'steel-panel',
          layout: { stock: 'S1' },
        },
      ],
    },
  ],
}).job!;

export const smallWall = findWall(smallJob, 'A')!;
