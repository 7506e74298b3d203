import { workOutBuildUp } from '../../core/build-up/worked-build-up';
import type { SurveyedWall } from '../../core/survey/surveyed-wall';
import type { ZoneArea } from '../../core/zones/zone-area';
import * as v from 'valibot';
import { boxOfRegion, rectangle } from '../../core/geometry/polygon';
import { product as productSchema, type Product } from '../../core/job/product-schema';
import { jobSchema, type Job } from '../../core/job/schema';
import type { WorkedWall } from '../../core/worked-out';

/* Jobs of the fewest words, with layers of their own, worked out by hand: a zone of 10 m², or several. */

export function productOf(fields: Partial<v.InferInput<typeof productSchema>>): Product {
  return v.parse(productSchema, {
    id: 'P1',
    name: 'Paint',
    layer: 'decorative',
    unit: 'l',
    drying: 'water-loss',
    ...fields,
  });
}

export interface Layers {
  readonly products?: readonly Product[];
  readonly layers?: readonly { kind: string; product?: string; over?: string; coats?: number }[];
  readonly zones?: number;
}

export function jobOf(
  programme: Record<string, unknown> | undefined,
  { products = [], layers = [], zones = 1 }: Layers = {},
): Job {
  return v.parse(jobSchema, {
    format: 'lodeplan-job',
    version: 1,
    name: 'Small print room',
    reference: 'T-001',
    date: '2026-02-16',
    ...(programme && { programme }),
    products,
    buildUps: [{ id: 'own', kind: 'writable', layers }],
    walls: [
      {
        id: 'A',
        name: 'Proofing wall',
        outline: [
          [0, 0],
          [40_000, 0],
          [40_000, 2500],
          [0, 2500],
        ],
        zones: Array.from({ length: zones }, (_, i) => ({
          id: `Z${i + 1}`,
          name: 'Proofs',
          buildUp: 'writable',
          layers: 'own',
          shape: [
            [i * 4000, 0],
            [i * 4000 + 4000, 0],
            [i * 4000 + 4000, 2500],
            [i * 4000, 2500],
          ],
        })),
      },
    ],
  });
}

export function wallsOf(job: Job): WorkedWall[] {
  return job.walls.map((wall): WorkedWall => {
    const outline = rectangle(0, 0, 4_000_000, 250_000);
    const survey: SurveyedWall = {
      wall,
      outline: { ring: outline.outer, arcs: [] },
      keepOuts: [],
      rim: [],
      movementJoints: [],
      usable: [outline],
      findings: [],
    };
    return {
      survey,
      hung: [],
      hungFindings: [],
      zones: wall.zones.map((zone, i) => {
        const shape = rectangle(i * 400_000, 0, 400_000, 250_000);
        const area: ZoneArea = {
          zone,
          shape: { ring: shape.outer, arcs: [] },
          shapePolygon: shape,
          box: boxOfRegion([shape]),
          area: [shape],
          boundaries: [],
          findings: [],
        };
        return { area, layout: null, buildUp: workOutBuildUp(job, survey, area) };
      }),
    };
  });
}
