import type { Finding } from '../finding';
import { regionArea, type Region } from '../geometry/polygon';
import { ownKindsOf } from '../job/fitting-kinds';
import type { Product } from '../job/product-schema';
import type { Job, Wall } from '../job/schema';
import type { WorkedWall } from '../worked-out';
import { endNeeds } from './end-needs';
import type { StripPlan } from './film-strips';
import { layerArea, layerNeeds, type LayerArea } from './layer-needs';
import type { Need } from './need';
import type { Settings } from './settings';
import { sundryNeeds } from './sundry-needs';
import { measureZones, type ZoneMeasures } from './zone-measures';
import type { ZoneTask } from './zone-task';

/** How film is laid in a zone. */
export interface ZoneFilm {
  readonly wall: string;
  readonly zone: string;
  /** Place of the film in the build-up, from 0. */
  readonly layer: number;
  readonly product: string;
  readonly plan: StripPlan;
  /** What it covers. */
  readonly region: Region;
}

/** Everything that a wall takes, before anything is rounded up to packs. */
export interface WallNeeds {
  readonly wall: WorkedWall;
  readonly zones: readonly {
    readonly measures: ZoneMeasures;
    readonly layers: ZoneTask['layers'];
    /** One for each layer. */
    readonly areas: readonly LayerArea[];
  }[];
  readonly needs: readonly Need[];
  readonly films: readonly ZoneFilm[];
  readonly findings: readonly Finding[];
}

/**
 * The needs of each wall. Kept for a wall of the job until it, its panels or something else that they follow from has
 * changed; prices and packs are not among that. Yields after each wall that had to be measured.
 */
export function* needsOfWalls(
  job: Job,
  walls: readonly WorkedWall[],
  settings: Settings,
): Generator<undefined, WallNeeds[]> {
  const key = keyOf(job, settings);
  const all: WallNeeds[] = [];
  for (const wall of walls) {
    const known = kept.get(wall.survey.wall);
    if (known?.key === key && hasSamePanels(known.needs.wall, wall)) {
      all.push(known.needs);
      continue;
    }
    const needs = needsOfWall(job, wall, settings);
    kept.set(wall.survey.wall, { key, needs });
    all.push(needs);
    yield undefined;
  }
  return all;
}

/** By the walls of the job, which stay the same objects while nobody changes them. */
const kept = new WeakMap<Wall, { readonly key: string; readonly needs: WallNeeds }>();

function hasSamePanels(a: WorkedWall, b: WorkedWall): boolean {
  return a.zones.length === b.zones.length && a.zones.every(({ layout }, i) => layout === b.zones[i]!.layout);
}

function needsOfWall(job: Job, worked: WorkedWall, settings: Settings): WallNeeds {
  const { wall } = worked.survey;
  const counted = new Set<string>();
  const zones = measureZones(worked, ownKindsOf(job)).map((measures, z) => {
    const { buildUp } = worked.zones[z]!;
    const task: ZoneTask = {
      wall,
      measures,
      layers: buildUp.resolved.layers,
      settings,
      featherArea: regionArea(buildUp.edges.feather),
    };
    return {
      task,
      own: layerNeeds(task),
      others: [...endNeeds(task, buildUp, counted), ...sundryNeeds(task)],
    };
  });
  return {
    wall: worked,
    zones: zones.map(({ task }) => ({
      measures: task.measures,
      layers: task.layers,
      areas: task.layers.map((_, i) => layerArea(task, i)),
    })),
    needs: zones.flatMap(({ own, others }) => [...own.needs, ...others]),
    films: zones.flatMap(({ task, own }) =>
      own.films.map(({ layer, plan }) => ({
        wall: wall.id,
        zone: task.measures.zone.id,
        layer,
        product: task.layers[layer]!.product!.id,
        plan,
        region: task.measures.face,
      })),
    ),
    findings: zones.flatMap(({ own }) => own.findings),
  };
}

function keyOf({ products = [], buildUps, stock, fittingKinds }: Job, settings: Settings): string {
  // Rules of measurement and conditions of work change nothing that is needed.
  const { sundries, measurement: _m, temperature: _t, hands: _h, potLifeHalves: _p, ...others } = settings;
  return JSON.stringify([
    products.map(withoutPacks),
    buildUps,
    stock.map(({ id, thickness }) => [id, thickness]),
    fittingKinds,
    others,
    sundries.map(({ packs: _, ...rest }) => rest),
  ]);
}

const written = new WeakMap<Product, string>();

/** A product that did not change is not written again. */
function withoutPacks(product: Product): string {
  let text = written.get(product);
  if (text === undefined) {
    const { packs: _, ...rest } = product;
    text = JSON.stringify(rest);
    written.set(product, text);
  }
  return text;
}
