import { readJobObject } from '../../core/job/read';
import { standardGravity } from '../../core/holding/force-units';
import { wallOfItems } from '../../core/holding/judge-wall';
import type { WallOfItems } from '../../core/holding/held-item';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';

export type Fields = Record<string, unknown>;

export const glue = { id: 'glue', name: 'Adhesive', layer: 'adhesive', unit: 'kg', density: 1.5 };
export const levelling = { id: 'levelling', name: 'Filler', layer: 'filler', unit: 'kg', density: 1.2 };

/** A wall of 3 × 2 m: two panels of 1 × 2 m on the left, nothing on the right. Half a millimetre of steel, 1 mm over it. */
export function jobWith(items: readonly Fields[], { wall = {}, zone = {}, ...rest }: Fields = {}): Job {
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Proofs',
    stock: [{ id: 'S', width: 1000, height: 2000, thickness: 0.5 }],
    products: [{ ...glue, shearStrength: 1, peelStrength: 4 }, levelling],
    buildUps: [
      {
        id: 'plain',
        kind: 'steel-panel',
        layers: [
          { kind: 'adhesive', product: 'glue', thickness: 1 },
          { kind: 'steel' },
          { kind: 'filler', product: 'levelling', thickness: 1 },
        ],
      },
    ],
    walls: [
      {
        id: 'A',
        outline: rectangle(0, 0, 3000, 2000),
        ground: { hollow: 0 },
        peopleBelow: [],
        zones: [
          {
            id: 'Z1',
            shape: rectangle(0, 0, 2000, 2000),
            buildUp: 'steel-panel',
            layers: 'plain',
            layout: { stock: 'S', start: { x: 0, y: 0 } },
            ...(zone as object),
          },
        ],
        hung: items,
        ...(wall as object),
      },
    ],
    ...rest,
  });
  if (!job) throw new Error(findings[0]?.text);
  return job;
}

export function rectangle(x: number, y: number, width: number, height: number): number[][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** The first wall of a job with all that its items are judged on. */
export function firstWall(job: Job): WallOfItems {
  const { survey, zones } = workOutFully(job).walls[0]!;
  return wallOfItems(job, survey.wall, zones);
}

export const corners = [
  [20, 20],
  [180, 20],
  [20, 220],
  [180, 220],
];

/** Example 1 of the note: 4 N, 5 mm from the wall, four discs 20 × 5. */
export const board = {
  id: 'H1',
  kind: 'print',
  x: 300,
  y: 800,
  width: 200,
  height: 240,
  depth: 10,
  weight: 4 / standardGravity,
  restsOnWall: true,
  use: 'light-at-reach',
  magnets: { magnet: 'N42-20x5', places: corners },
};
