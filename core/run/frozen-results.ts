import * as v from 'valibot';
import type { ResolvedBuildUp } from '../build-up/resolve';
import type { Finding } from '../finding';
import type { Polygon } from '../geometry/polygon';
import { layerKinds } from '../job/product-schema';
import type { Revision } from '../job/schema';
import type { ZoneLayout } from '../panels/panel';
import { toHundredth } from '../units';
import type { JobCutting, JobSheet, WorkedOut, WorkedZone } from '../worked-out';
import { toResults } from './results';
import { toMinorUnits } from './whole-money';

/*
 * Results as a revision keeps them: the results file, and under `laid` what only drawings ask for (cell, course, causes of
 * edges; of a zone how its start was found) and under `layers` its layers with their products, as the program holds it, in hundredths. So the documents of a revision are
 * printed from its record, whatever layout and cutting find by then.
 */

/** The results file of a worked-out job with all that its documents need. */
export function freezeResults(worked: WorkedOut): NonNullable<Revision['results']> {
  const results = toResults(worked);
  return {
    ...results,
    steps: worked.steps,
    walls: results.walls.map((wall, w) => ({
      ...wall,
      zones: wall.zones.map((zone, z) => freezeZone(zone, worked.walls[w]!.zones[z]!)),
    })),
  };
}

type ZoneResult = ReturnType<typeof toResults>['walls'][number]['zones'][number];

function freezeZone(zone: ZoneResult, { layout, buildUp: { resolved } }: WorkedZone) {
  if (!layout) return { ...zone, layers: resolved };
  const { panels, ...laid } = layout;
  return {
    ...zone,
    layers: resolved,
    laid,
    panels: zone.panels.map((panel, i) => {
      const {
        mark: _mark,
        stock: _stock,
        full: _full,
        sliver: _sliver,
        outline: _outline,
        ...own
      } = panels[i]!;
      return { ...panel, laid: own };
    }),
  };
}

const integer = v.pipe(v.number(), v.integer());
const point = v.object({ x: integer, y: integer });
const length = v.pipe(v.number(), v.finite());
const pair = v.tuple([length, length]);
const ring = v.pipe(v.array(pair), v.minLength(3));
const shape = { outline: ring, holes: v.optional(v.array(ring), []) };
const cause = v.looseObject({ kind: v.string() });

const frozenPanel = v.object({
  mark: v.string(),
  stock: v.string(),
  full: v.boolean(),
  sliver: v.boolean(),
  ...shape,
  laid: v.looseObject({ cell: point, course: integer, causes: v.array(v.array(cause)) }),
});

const frozenZone = v.object({
  id: v.string(),
  laid: v.optional(
    v.looseObject({
      start: point,
      considered: integer,
      runnersUp: v.array(v.unknown()),
      findings: v.array(v.unknown()),
    }),
  ),
  panels: v.array(frozenPanel),
  layers: v.optional(
    v.looseObject({
      id: v.string(),
      name: v.string(),
      layers: v.array(
        v.looseObject({
          layer: v.looseObject({ kind: v.string(), over: v.string() }),
          product: v.nullable(v.looseObject({ id: v.string(), name: v.string(), coats: integer })),
          coats: integer,
          thickness: v.nullable(length),
        }),
      ),
    }),
  ),
});

const frozenSheet = v.object({
  id: v.string(),
  stock: v.string(),
  delivery: v.string(),
  fromRack: v.nullable(v.string()),
  width: length,
  height: length,
  pattern: integer,
  placements: v.array(
    v.object({
      mark: v.string(),
      ...shape,
      quarterTurns: v.picklist([0, 1, 2, 3]),
      turnedOver: v.boolean(),
    }),
  ),
  offcuts: v.array(v.object({ x: length, y: length, width: length, height: length, keep: v.boolean() })),
  cuts: v.array(v.object({ from: pair, to: pair, opens: v.optional(v.string()) })),
});

const frozenResults = v.object({
  steps: integer,
  walls: v.array(v.object({ id: v.string(), zones: v.array(frozenZone) })),
  cutting: v.object({
    newSheets: integer,
    lowerBound: integer,
    cost: length,
    costLowerBound: length,
    leastPossible: v.boolean(),
    sheets: v.array(frozenSheet),
  }),
  findings: v.array(
    v.looseObject({ level: v.picklist(['error', 'warning', 'note']), code: v.string(), text: v.string() }),
  ),
});

export type FrozenResults = v.InferOutput<typeof frozenResults>;
export type FrozenSheet = v.InferOutput<typeof frozenSheet>;

/** null where a record holds less than documents need: another program may have issued it. */
export function parseFrozen(results: unknown): FrozenResults | null {
  const parsed = v.safeParse(frozenResults, results);
  return parsed.success ? parsed.output : null;
}

/** The stock sheets of a record's plan; [] where it has none that can be read. */
export function frozenSheets(results: unknown): FrozenSheet[] {
  const parsed = v.safeParse(v.object({ cutting: v.object({ sheets: v.array(frozenSheet) }) }), results);
  return parsed.success ? parsed.output.cutting.sheets : [];
}

/** A zone's layout again; null for a zone without steel. */
export function thawLayout({
  laid,
  panels,
}: FrozenResults['walls'][number]['zones'][number]): ZoneLayout | null {
  if (!laid) return null;
  return {
    ...(laid as unknown as Omit<ZoneLayout, 'panels'>),
    panels: panels.map(({ mark, stock, full, sliver, laid: own, ...shape }) => ({
      mark,
      stock,
      full,
      sliver,
      outline: thawShape(shape),
      ...(own as unknown as Pick<ZoneLayout['panels'][number], 'cell' | 'course' | 'causes'>),
    })),
  };
}

/** A zone's layers again; undefined for a record that does not keep them, or names kinds that nobody knows. */
export function thawLayers({
  layers,
}: FrozenResults['walls'][number]['zones'][number]): ResolvedBuildUp | undefined {
  const isKnown = layers?.layers.every(({ layer }) => (layerKinds as readonly string[]).includes(layer.kind));
  return isKnown ? (layers as unknown as ResolvedBuildUp) : undefined;
}

/** The plan again, but for what is to be ordered, which follows from it. */
export function thawCutting({ cutting }: FrozenResults, currency: string): Omit<JobCutting, 'order'> {
  return {
    ...cutting,
    cost: toMinorUnits(cutting.cost, currency),
    costLowerBound: toMinorUnits(cutting.costLowerBound, currency),
    sheets: cutting.sheets.map(thawSheet),
  };
}

export function thawFindings({ findings }: FrozenResults): Finding[] {
  return findings as unknown as Finding[];
}

function thawSheet({ width, height, placements, offcuts, cuts, ...rest }: FrozenSheet): JobSheet {
  return {
    ...rest,
    width: toHundredth(width),
    height: toHundredth(height),
    placements: placements.map(({ mark, quarterTurns, turnedOver, ...shape }) => ({
      mark,
      outline: thawShape(shape),
      quarterTurns,
      turnedOver,
    })),
    offcuts: offcuts.map(({ keep, ...box }) => ({
      x: toHundredth(box.x),
      y: toHundredth(box.y),
      width: toHundredth(box.width),
      height: toHundredth(box.height),
      keep,
    })),
    cuts: cuts.map(({ from, to, opens }) => ({
      from: thawPoint(from),
      to: thawPoint(to),
      ...(opens === undefined ? {} : { opens }),
    })),
  };
}

function thawShape({
  outline,
  holes,
}: {
  outline: [number, number][];
  holes: [number, number][][];
}): Polygon {
  return { outer: outline.map(thawPoint), holes: holes.map((hole) => hole.map(thawPoint)) };
}

function thawPoint([x, y]: [number, number]) {
  return { x: toHundredth(x), y: toHundredth(y) };
}
