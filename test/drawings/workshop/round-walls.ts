import { workOutFully } from '../../../core/run/pipeline';
import { readJob } from '../../../core/job/read';
import type { WorkedOut } from '../../../core/worked-out';

const steel = { stock: 'S1', start: 'lower-left' };
const stock = [
  { id: 'S1', name: 'Steel', width: 500, height: 500, thickness: 0.5, price: 6, hasFace: false },
];

/** @throws Error if the job is one that no one may open */
export function workedFrom(walls: readonly unknown[], cutting: object = {}): WorkedOut {
  const { job, findings } = readJob(
    JSON.stringify({
      format: 'lodeplan-job',
      version: 1,
      name: 'Test',
      currency: 'EUR',
      stock,
      cutting,
      walls,
    }),
  );
  if (!job) throw new Error(findings.map(({ text }) => text).join(' '));
  return workOutFully(job, { steps: 2 });
}

/** An arched opening, a round pipe and a zone with a curved edge, all of them cut by joints. */
export function roundWalls(): WorkedOut {
  return workedFrom([
    {
      id: 'A',
      outline: [
        [0, 0],
        [4000, 0],
        [4000, 2600],
        [0, 2600],
      ],
      openings: [
        {
          id: 'D1',
          kind: 'arch',
          clearance: 20,
          shape: [[1000, 0], [1900, 0], [1900, 1200], { arcTo: [1000, 1200], via: [1450, 1650] }],
        },
      ],
      fittings: [{ id: 'P1', kind: 'pipe', circle: { x: 2600, y: 1480, diameter: 120 }, clearance: 10 }],
      zones: [
        {
          id: 'Z1',
          buildUp: 'steel-panel',
          shape: [[800, 900], [3300, 900], { arcTo: [3300, 2100], via: [3500, 1500] }, [800, 2100]],
          layout: steel,
        },
      ],
    },
  ]);
}

/** A wall with round and square things at random places; invented, the same for the same seed. */
export function randomWorkshopJob(seed: number): WorkedOut {
  let state = seed * 2654435761 + 1;
  const draw = (from: number, to: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return from + Math.floor((state / 2 ** 32) * (to - from + 1));
  };
  const [width, height] = [draw(1500, 3500), draw(1500, 2600)];
  const fittings = Array.from({ length: draw(1, 4) }, (_, i) => {
    const [x, y] = [draw(200, width - 400), draw(200, height - 400)];
    return draw(0, 1) === 0
      ? { id: `P${i}`, kind: 'pipe', clearance: draw(0, 20), circle: { x, y, diameter: draw(20, 180) } }
      : { id: `K${i}`, kind: 'socket', clearance: 5, x, y, width: draw(80, 220), height: draw(80, 160) };
  });
  const zone = {
    id: 'Z1',
    buildUp: 'steel-panel',
    layout: { stock: 'S1', start: 'lower-left', jointGap: draw(0, 2) },
    shape: [
      [100, 100],
      [width - 300, 100],
      { arcTo: [width - 300, height - 100], via: [width - draw(20, 280), height / 2] },
      [100, height - draw(100, 400)],
    ],
  };
  const outline = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const method = draw(0, 1) === 0 ? 'free' : 'edge-to-edge';
  return workedFrom([{ id: 'A', outline, fittings, zones: [zone] }], { method, kerf: draw(0, 2) });
}
