import { buildUpOf } from '../build-up/resolve';
import { buildUpFindings, workOutBuildUp } from '../build-up/worked-build-up';
import { searchCuttingInSteps } from '../cutting/search';
import type { Finding } from '../finding';
import type { Job, Wall, Zone } from '../job/schema';
import { sentenceInUnits, type LengthUnits } from '../lengths';
import { ownKindsOf } from '../job/fitting-kinds';
import { findKind } from '../job/kind-names';
import { hungResults } from '../holding/judge-wall';
import { jobCautions } from '../job/cautions';
import { jobWarnings } from '../job/warnings';
import { markingFindings } from '../markings/marking-findings';
import { layOutZoneInSteps, type LayoutRequest } from '../panels/lay-out';
import type { Steps } from '../panels/pace';
import type { ZoneLayout } from '../panels/panel';
import { doorFindings } from '../zones/door-findings';
import type { ZoneArea } from '../zones/zone-area';
import { gatherDeliveries, type Delivery } from './deliveries';
import { joinDeliveries } from './job-cutting';
import { layoutRequest } from './layout-request';
import { lineRunOf, lineRuns, type LineRuns } from './line-runs';
import { planDeliveries } from './plan-deliveries';
import { defaultSteps, stepsFor } from './steps';
import { stockFindings } from './stock-findings';
import { rackOf } from './stock-formats';
import { createCache, type WallCache } from './wall-cache';
import type { WorkedOut, WorkedWall, WorkedZone } from '../worked-out';

/**
 * Works out a job: survey → zones → panels → cutting, and the build-up of each zone.
 *
 * Yields a result as soon as every wall is laid out and has a first cutting plan, a better one whenever there is one,
 * and `undefined` at pauses in between, at most some milliseconds apart, so that the caller may stop or listen;
 * returns the final result. The same job and steps give the same result everywhere.
 *
 * @param steps cutting steps for a delivery of up to 200 panels; larger ones get proportionally more
 * @param cache walls and layouts of earlier calls, reused where nothing that they depend on has changed
 */
export function* workOut(
  job: Job,
  { steps = defaultSteps, cache = createCache() }: { steps?: number; cache?: WallCache } = {},
): Generator<WorkedOut | undefined, WorkedOut> {
  const walls: WorkedWall[] = [];
  const runs = lineRuns(job);
  for (const wall of job.walls) {
    walls.push(yield* workOutWall(job, wall, runs, cache));
    yield undefined;
  }
  cache.sweep();

  const findings = gatherFindings(job, walls);
  const deliveries = gatherDeliveries(job, walls);
  const result = function* (plans: Parameters<typeof joinDeliveries>[2]): Steps<WorkedOut> {
    const cutting = yield* joinDeliveries(job, deliveries, plans);
    return {
      job,
      walls,
      cutting,
      findings: inOrder(inUnits([...findings, ...stockFindings(job, cutting)], job.units)),
      steps,
    };
  };
  const stepsOf = ({ task }: Delivery) => stepsFor(task.panels.length, steps);
  const planning = planDeliveries(deliveries, rackOf(job), searchCuttingInSteps, stepsOf);
  for (;;) {
    const { value, done } = planning.next();
    if (done) return yield* result(value);
    yield value && (yield* result(value));
  }
}

/** Runs `workOut` to its end. */
export function workOutFully(job: Job, options?: Parameters<typeof workOut>[1]): WorkedOut {
  const work = workOut(job, options);
  for (;;) {
    const { value, done } = work.next();
    if (done) return value;
  }
}

/** Yields at pauses; zones whose layout depends on nothing that changed keep it. */
function* workOutWall(
  job: Job,
  wall: Wall,
  runs: LineRuns,
  cache: WallCache,
): Generator<undefined, WorkedWall, void> {
  const key = keyOf(job, wall, runs.tiedWalls(wall));
  const known = cache.recall(key);
  if (known) return known;
  const { survey, areas } = runs.measure(wall);
  const zones: WorkedZone[] = [];
  const layouts = new Map<string, ZoneLayout>();
  for (const area of areas) {
    yield undefined;
    const laid = yield* layOutArea(job, wall, area, runs, cache);
    if (laid) layouts.set(laid.key, laid.layout);
    zones.push({ area, layout: laid?.layout ?? null, buildUp: workOutBuildUp(job, survey, area) });
  }
  const worked = { survey, zones, ...hungResults(job, wall, zones) };
  cache.keep(key, worked, layouts);
  return worked;
}

/** Undefined for a zone without steel. */
function* layOutArea(
  job: Job,
  wall: Wall,
  area: ZoneArea,
  runs: LineRuns,
  cache: WallCache,
): Steps<{ key: string; layout: ZoneLayout } | undefined> {
  const layOutFirst = function* (firstWall: Wall, firstArea: ZoneArea): Steps<ZoneLayout | undefined> {
    return (yield* layOutArea(job, firstWall, firstArea, runs, cache))?.layout;
  };
  const run = yield* lineRunOf(runs.runOf(wall, area), wall, area, runs, layOutFirst);
  const request = layoutRequest(job, wall, area, run);
  if (!request) return undefined;
  const key = keyOfLayout(job, request);
  const layout = cache.recallLayout(key) ?? (yield* layOutZoneInSteps(request));
  // The first part of a run may be asked for by the others before its own wall is worked out.
  if (run) cache.keepLayout(key, layout);
  return { key, layout };
}

/** Everything that the result of a wall depends on. */
function keyOf(job: Job, wall: Wall, tied: readonly Wall[]): string {
  const { stock, cutting, revisions, currency, temperatures } = job;
  const { method, kerf } = cutting;
  const [own, ...others] = [wall, ...tied].map(withoutPhotos);
  return JSON.stringify([
    ...[own, stock, method, kerf, revisions.at(-1)?.id, currency, temperatures, others],
    ownPartsOf(job, wall),
  ]);
}

/** Another price of a pack works no wall out anew: what is bought goes by the job's products, not by these. */
function layersWithoutPacks(job: Job, wall: Wall, zone: Zone): unknown {
  const { layers, ...rest } = buildUpOf(job, zone, wall.ground);
  return {
    ...rest,
    layers: layers.map(({ product, ...layer }) => ({
      ...layer,
      product: product && { ...product, packs: [] },
    })),
  };
}

/** What the job itself says of the layers and the fittings of a wall: products and kinds that it does not use do not count. */
function ownPartsOf(job: Job, wall: Wall): unknown {
  const kinds = ownKindsOf(job);
  return [
    job.products || job.buildUps ? wall.zones.map((zone) => layersWithoutPacks(job, wall, zone)) : [],
    kinds.length > 0 ? wall.fittings.map(({ kind }) => findKind(kinds, kind)) : [],
    wall.hung ? [job.magnets, job.hungKinds] : [],
  ];
}

/** Photos are looked at and measured by, but nothing is worked out from them. */
function withoutPhotos({ photo: _photo, pins: _pins, ...rest }: Wall): unknown {
  return rest;
}

/** Everything that the layout of a zone depends on: of the wall only what cuts the zone. */
function keyOfLayout(job: Job, { wallId, area, stock, issued, cracks, wishes, run }: LayoutRequest): string {
  const { zone, box, area: region, boundaries } = area;
  const { method, kerf } = job.cutting;
  return JSON.stringify([
    wallId,
    zone.id,
    zone.layout,
    box,
    region,
    boundaries,
    stock,
    job.temperatures,
    method,
    kerf,
    issued,
    cracks,
    wishes,
    job.currency,
    run,
  ]);
}

function gatherFindings(job: Job, walls: readonly WorkedWall[]): Finding[] {
  return [
    ...jobWarnings(job),
    ...walls.flatMap(({ survey, zones }) => [
      ...survey.findings,
      ...doorFindings(
        job,
        survey,
        zones.map(({ area }) => area),
      ),
      ...zones.flatMap(({ area, layout }) => [
        ...area.findings,
        ...(layout?.findings ?? []),
        ...markingFindings(job, survey, area),
      ]),
    ]),
    ...walls.flatMap((wall) => wall.hungFindings),
    ...buildUpFindings(
      walls.flatMap(({ survey, zones }) => zones.map(({ area, buildUp }) => ({ survey, area, buildUp }))),
    ),
    ...jobCautions(job),
  ];
}

/** Stages write mm, so that what they found can be kept when only the units change. */
function inUnits(findings: readonly Finding[], units: LengthUnits = 'mm'): Finding[] {
  const write = (finding: Finding) => ({ ...finding, text: sentenceInUnits(finding.text, units) });
  return units === 'mm' ? [...findings] : findings.map(write);
}

/** The gravest first, otherwise as they come. */
function inOrder(findings: readonly Finding[]): Finding[] {
  const order = { error: 0, warning: 1, note: 2 };
  return [...findings].sort((a, b) => order[a.level] - order[b.level]);
}
