import { workOutBuildUp, type WorkedBuildUp } from '../../core/build-up/worked-build-up';
import type { RuleContext } from '../../core/build-up/rule';
import { contextOf } from '../../core/build-up/rules';
import { emptyJob, newWall, newZone } from '../../core/job/defaults';
import type { Ground } from '../../core/job/ground-schema';
import type { Layer, LayerKind, Product } from '../../core/job/product-schema';
import { readJobObject } from '../../core/job/read';
import type { Job, Wall, Zone } from '../../core/job/schema';
import { surveyWall } from '../../core/survey/survey';
import { zoneAreas } from '../../core/zones/zone-areas';

/** A ground on which nothing is amiss, everything of it recorded. */
export const soundGround: Ground = {
  material: 'bare-plaster',
  hollow: 2,
  suction: 'normal',
  moisture: { value: 0.3, unit: 'CM-%' },
  exposure: 'dry',
  escapeRoute: false,
};

export interface Built {
  readonly ground?: Ground;
  /** Layers of the zone's own, in short: `filler`, `filler=product`, `metal-primer@edges`. */
  readonly layers?: readonly string[];
  readonly products?: readonly Partial<Product>[];
  readonly zone?: Partial<Zone>;
  readonly wall?: Partial<Wall>;
  /** Of steel, mm; null: not given. */
  readonly thickness?: number | null;
}

/** A wall of 6 × 3 m with one zone of 2 × 1 m in its middle, from (2000, 1000). */
export function builtJob(kind: string, built: Built = {}): Job {
  const { ground = soundGround, layers, products, zone, wall, thickness = 0.5 } = built;
  const empty = emptyJob('Studio');
  const { thickness: _thickness, ...bare } = empty.stock[0]!;
  const stock = [thickness === null ? bare : { ...bare, thickness }];
  const plain = newWall('A', 'Proofing wall', 6000, 3000);
  const made = newZone({ ...empty, stock }, plain, { x: 2000, y: 1000, width: 2000, height: 1000 }, kind);
  const job = {
    ...empty,
    stock,
    ...(layers ? { buildUps: [{ id: 'B1', name: '', kind, layers: layers.map(layerOf) }] } : {}),
    ...(products ? { products } : {}),
    walls: [
      { ...plain, ground, zones: [{ ...made, ...(layers ? { layers: 'B1' } : {}), ...zone }], ...wall },
    ],
  };
  const { job: read, findings } = readJobObject(job as unknown as Record<string, unknown>);
  if (!read) throw new Error(findings.map(({ text }) => text).join(' '));
  return read;
}

/** The first zone of the job's first wall, worked out. */
export function workedOf(job: Job, zone = 0): WorkedBuildUp {
  const survey = surveyWall(job.walls[0]!);
  return workOutBuildUp(job, survey, zoneAreas(survey)[zone]!);
}

export function contextIn(job: Job): RuleContext {
  return contextOf(job, job.walls[0]!, job.walls[0]!.zones[0]!);
}

export function layerOf(short: string): Layer {
  const [what, over = 'face'] = short.split('@');
  const [kind, product] = what!.split('=');
  return {
    kind: kind as LayerKind,
    ...(product === undefined ? {} : { product }),
    over: over as Layer['over'],
  };
}
