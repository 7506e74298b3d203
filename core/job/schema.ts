import * as v from 'valibot';

/*
 * The job file, version 1. Every object is loose: a field that is not listed here is kept when the file is
 * opened and saved again. Lengths in mm; x to the right, y up from the wall's datum.
 * What a shape alone cannot say (self-crossing outlines, references to nothing) is checked in `check.ts`.
 */

const length = v.pipe(v.number(), v.finite());
const size = v.pipe(length, v.gtValue(0));
const allowance = v.pipe(length, v.minValue(0));
const identifier = v.pipe(v.string(), v.minLength(1), v.maxLength(40));
const pair = v.tuple([length, length]);

const arcVertex = v.looseObject({ arcTo: pair, via: pair });
export const vertexSchema = v.union([pair, arcVertex]);
const vertices = v.pipe(v.array(vertexSchema), v.minLength(3));

const circle = v.looseObject({ x: length, y: length, diameter: size });

/** A rectangle (x, y its lower left), or a circle, or a free shape; `check.ts` holds that it is exactly one. */
const placed = {
  x: v.optional(length),
  y: v.optional(length),
  width: v.optional(size),
  height: v.optional(size),
  circle: v.optional(circle),
  shape: v.optional(vertices),
  clearance: v.optional(allowance, 0),
};

export const openingKinds = ['door', 'window', 'hatch', 'niche', 'arch', 'free'] as const;
export const fittingKinds = [
  'socket',
  'switch',
  'light',
  'thermostat',
  'radiator',
  'pipe',
  'beam-end',
  'free',
] as const;

const opening = v.looseObject({
  id: identifier,
  kind: v.string(),
  name: v.optional(v.string()),
  ...placed,
  /** Doors: the side the hinges are on, seen square-on. */
  hinge: v.optional(v.picklist(['left', 'right'])),
  /** Doors: whether the leaf comes towards whoever looks at the wall. */
  swing: v.optional(v.picklist(['towards', 'away'])),
  /** Doors: height of the handle above the door's foot. */
  handle: v.optional(size),
});

const fitting = v.looseObject({ id: identifier, kind: v.string(), name: v.optional(v.string()), ...placed });

export const startNames = [
  'best',
  'lower-left',
  'lower-right',
  'upper-left',
  'upper-right',
  'centre-on-joint',
  'centre-on-panel',
] as const;

const layout = v.looseObject({
  stock: identifier,
  stocks: v.optional(v.array(identifier)),
  cutFrom: v.optional(v.array(identifier)),
  start: v.optional(v.union([v.picklist(startNames), v.looseObject({ x: length, y: length })]), 'best'),
  turned: v.optional(v.boolean(), false),
  jointGap: v.optional(allowance, 0),
  /** Fraction of the sheet's width by which each course is shifted against the one below. */
  stagger: v.optional(v.pipe(length, v.minValue(0), v.ltValue(1)), 0),
  leastWidth: v.optional(allowance, 50),
  /** mm². */
  leastArea: v.optional(allowance),
});

const zone = v.looseObject({
  id: identifier,
  name: v.optional(v.string(), ''),
  shape: vertices,
  holes: v.optional(v.array(vertices), []),
  buildUp: v.string(),
  layout: v.optional(layout),
});

const rim = v.looseObject({
  floor: v.optional(allowance, 0),
  ceiling: v.optional(allowance, 0),
  left: v.optional(allowance, 0),
  right: v.optional(allowance, 0),
});

const wall = v.looseObject({
  id: identifier,
  name: v.optional(v.string(), ''),
  outline: vertices,
  delivery: v.optional(v.string()),
  rim: v.optional(rim, { floor: 0, ceiling: 0, left: 0, right: 0 }),
  openings: v.optional(v.array(opening), []),
  fittings: v.optional(v.array(fitting), []),
  zones: v.optional(v.array(zone), []),
});

const stockSheet = v.looseObject({
  id: identifier,
  name: v.optional(v.string(), ''),
  width: size,
  height: size,
  thickness: v.optional(size),
  /** In the job's currency, rounded to its minor unit on reading. */
  price: v.optional(allowance, 0),
  /** A sheet with a face side cannot be turned over. */
  hasFace: v.optional(v.boolean(), false),
  coating: v.optional(v.string()),
  /** Sheets bought beyond the plan, if the plan buys any of this stock. */
  spares: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0)), 0),
});

const rackPiece = v.looseObject({ id: identifier, stock: identifier, width: size, height: size });

const cutting = v.looseObject({
  method: v.optional(v.picklist(['edge-to-edge', 'free']), 'edge-to-edge'),
  kerf: v.optional(allowance, 0),
  /** An offcut is kept if it is at least this wide and high, either way round. */
  leastOffcut: v.optional(v.tuple([allowance, allowance]), [100, 100]),
});

/** A frozen record of the job as issued; its results are printed again from here. */
const revision = v.looseObject({
  id: identifier,
  date: v.string(),
  note: v.optional(v.string(), ''),
  job: v.optional(v.looseObject({})),
  results: v.optional(v.looseObject({})),
});

export const jobSchema = v.looseObject({
  format: v.literal('lodeplan-job'),
  version: v.literal(1),
  name: v.pipe(v.string(), v.minLength(1)),
  client: v.optional(v.string(), ''),
  reference: v.optional(v.string(), ''),
  revision: v.optional(v.string(), ''),
  /** Date shown on documents, as written by the user (ISO 8601 day); core has no clock. */
  date: v.optional(v.string(), ''),
  currency: v.optional(v.pipe(v.string(), v.regex(/^[A-Z]{3}$/)), 'EUR'),
  stock: v.optional(v.array(stockSheet), []),
  rack: v.optional(v.array(rackPiece), []),
  cutting: v.optional(cutting, { method: 'edge-to-edge', kerf: 0, leastOffcut: [100, 100] }),
  walls: v.optional(v.array(wall), []),
  revisions: v.optional(v.array(revision), []),
});

export type Job = v.InferOutput<typeof jobSchema>;
export type Wall = v.InferOutput<typeof wall>;
export type Opening = v.InferOutput<typeof opening>;
export type Fitting = v.InferOutput<typeof fitting>;
export type Zone = v.InferOutput<typeof zone>;
export type Layout = v.InferOutput<typeof layout>;
export type StockSheet = v.InferOutput<typeof stockSheet>;
export type RackPiece = v.InferOutput<typeof rackPiece>;
export type CuttingSettings = v.InferOutput<typeof cutting>;
export type Rim = v.InferOutput<typeof rim>;
export type Revision = v.InferOutput<typeof revision>;
export type Vertex = v.InferOutput<typeof vertexSchema>;
export type Start = Layout['start'];
