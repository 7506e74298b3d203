import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { length, stockSize, allowance, text, identifier } from './schema-values';

/* Stock sheets, the rack, and how sheets are cut. */

export const trim = v.pipe(
  namedFields({
    left: v.optional(allowance, 0),
    right: v.optional(allowance, 0),
    bottom: v.optional(allowance, 0),
    top: v.optional(allowance, 0),
  }),
  v.description('Margins that are cut off before anything else, such as a damaged or rolled edge.'),
);

export const tolerance = v.pipe(
  namedFields({ size: v.optional(allowance, 0), squareness: v.optional(allowance, 0) }),
  v.description('By how much a stock sheet may be longer or shorter, and out of square, as delivered.'),
);

export const steelKinds = ['low-carbon', 'ferritic-stainless', 'austenitic-stainless', 'unknown'] as const;

const thicknessOrder = v.pipe(
  namedFields({
    standard: v.picklist(['EN 10131', 'EN 10143']),
    yieldStrength: v.optional(v.pipe(length, v.gtValue(0), v.maxValue(2_000), v.description('Least, MPa.'))),
    tolerance: v.optional(v.picklist(['normal', 'special']), 'normal'),
  }),
  v.description('The standard that the tolerance of its thickness was ordered by.'),
);

export const stockSheet = namedFields({
  id: identifier,
  name: v.optional(text, ''),
  width: stockSize,
  height: stockSize,
  thickness: v.optional(v.pipe(length, v.minValue(limits.leastSize), v.maxValue(limits.thickestStockSheet))),
  /** In the job's currency, rounded to its minor unit on reading. */
  price: v.optional(
    v.pipe(
      length,
      v.minValue(0),
      v.maxValue(limits.highestPrice),
      v.description("In the job's currency, rounded to its minor unit on reading."),
    ),
    0,
  ),
  /** A stock sheet with a face side cannot be turned over. */
  hasFace: v.optional(
    v.pipe(v.boolean(), v.description('A stock sheet with a face is not turned over.')),
    false,
  ),
  coating: v.optional(text),
  steel: v.optional(v.pipe(v.picklist(steelKinds), v.description('Absent: taken for low-carbon.'))),
  thicknessOrder: v.optional(thicknessOrder),
  trim: v.optional(trim),
  available: v.optional(
    v.pipe(
      v.number(),
      v.integer(),
      v.minValue(0),
      v.maxValue(1_000_000),
      v.description('How many can be had; absent: as many as the plan asks for.'),
    ),
  ),
  tolerance: v.optional(tolerance),
  /** Stock sheets bought beyond the plan, if the plan buys any of this stock. */
  spares: v.optional(
    v.pipe(
      v.number(),
      v.integer(),
      v.minValue(0),
      v.maxValue(100_000),
      v.description('Bought beyond the plan, if the plan buys any of this stock.'),
    ),
    0,
  ),
});

export const rackPiece = namedFields({
  id: identifier,
  stock: identifier,
  width: stockSize,
  height: stockSize,
  value: v.optional(
    v.pipe(
      length,
      v.minValue(0),
      v.maxValue(limits.highestPrice),
      v.description("What using it costs, in the job's currency; absent: nothing."),
    ),
  ),
  firm: v.optional(
    v.pipe(identifier, v.description("Key of the piece on the firm's rack; absent: the job's own piece.")),
  ),
  from: v.optional(
    v.pipe(identifier, v.description('Of an offcut: the planned stock sheet or rack piece it is left of.')),
  ),
});

export const cutting = namedFields({
  method: v.optional(v.picklist(['edge-to-edge', 'free']), 'edge-to-edge'),
  kerf: v.optional(allowance, 0),
  /** An offcut is kept if it is at least this wide and high, either way round. */
  leastOffcut: v.optional(
    v.pipe(
      v.strictTuple([allowance, allowance]),
      v.description('An offcut at least this wide and high, either way round, is kept.'),
    ),
    [100, 100],
  ),
});
