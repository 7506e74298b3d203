import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { pack } from './product-schema';
import { allowance, identifier, length, text } from './schema-values';

/*
 * What quantities are counted by: the rule of measurement of the offer, the assumptions that no data sheet gives, and
 * sundries. Every field is optional; what stands in its place when it is absent is said in its description.
 */

/** Rules of measurement by name; what each says stands in `core/quantities/measurement-rules.ts`. */
export const measurementRuleIds = [
  'net',
  'din-18363',
  'nrm2',
  'smm7',
  'voids-at-boundary',
  'is-1200',
] as const;

export const filmDirections = ['least-waste', 'upright', 'level'] as const;

/** What a sundry is counted by: m² of zone, metre of zone edge, metre of joint, electrical box, panel, or once a job. */
export const sundryMeasures = ['m2', 'edge', 'joint', 'box', 'panel', 'job'] as const;

const amount = v.pipe(length, v.gtValue(0), v.maxValue(1_000_000));

export const sundry = namedFields({
  id: identifier,
  name: v.pipe(text, v.minLength(1)),
  per: v.picklist(sundryMeasures),
  amount: v.pipe(amount, v.description('How much of its unit each m², metre, box, panel or job takes.')),
  unit: v.optional(v.pipe(text, v.description('Such as piece or m.')), 'piece'),
  packs: v.optional(v.pipe(v.array(pack), v.maxLength(limits.mostPacks)), []),
  on: v.optional(
    v.pipe(
      v.array(text),
      v.maxLength(limits.mostBuildUps),
      v.description('Build-ups of the zones that it is counted for; absent: all.'),
    ),
  ),
});

/** What is counted without being a product: battens, beads, trims and packing by the metre, the others by the piece. */
export const pieceKinds = [
  'batten',
  'stop-bead',
  'trim',
  'extension-ring',
  'longer-screws',
  'radiator-bracket',
  'architrave-packing',
  'skirting-packing',
  'reveal-bead',
  'prop',
] as const;

const piece = namedFields({
  kind: v.picklist(pieceKinds),
  packs: v.pipe(v.array(pack), v.maxLength(limits.mostPacks)),
});

export const quantitiesSettings = v.pipe(
  namedFields({
    measurement: v.optional(
      v.pipe(v.picklist(measurementRuleIds), v.description('How the offer measures; absent: net.')),
    ),
    temperature: v.optional(
      v.pipe(
        length,
        v.minValue(-20),
        v.maxValue(60),
        v.description('Of air and material while the work is done, °C; absent: 20.'),
      ),
    ),
    hands: v.optional(
      v.pipe(
        v.number(),
        v.integer(),
        v.minValue(1),
        v.maxValue(100),
        v.description('Who coat at the same time; absent: 1.'),
      ),
    ),
    potLifeHalves: v.optional(
      v.pipe(
        length,
        v.minValue(1),
        v.maxValue(100),
        v.description('Kelvin of warming that halve a pot life; absent: 10.'),
      ),
    ),
    hollowShare: v.optional(
      v.pipe(
        length,
        v.minValue(0),
        v.maxValue(1),
        v.description(
          'Mean depth of filling as a share of the deepest hollow surveyed, beside the thickness of the filler itself; absent: 0.33, of evenly falling hollows side by side.',
        ),
      ),
    ),
    edgeStrip: v.optional(
      v.pipe(
        allowance,
        v.description('Width of what protects a cut edge of steel, over its face, mm; absent: 20.'),
      ),
    ),
    jointStrip: v.optional(
      v.pipe(allowance, v.description('Width of what is laid over a joint of panels, mm; absent: 100.')),
    ),
    propsPerPanel: v.optional(
      v.pipe(
        v.number(),
        v.integer(),
        v.minValue(0),
        v.maxValue(100),
        v.description('Props that hold one panel until its adhesive does; absent: 2.'),
      ),
    ),
    proppedAtOnce: v.optional(
      v.pipe(
        v.number(),
        v.integer(),
        v.minValue(1),
        v.maxValue(1_000),
        v.description('Panels that stand propped at one time; absent: 6.'),
      ),
    ),
    filmDirection: v.optional(
      v.pipe(v.picklist(filmDirections), v.description('Which way strips of film run; absent: least-waste.')),
    ),
    filmOverlap: v.optional(
      v.pipe(
        allowance,
        v.description('By how much strips of film overlap for the double cut, mm; absent: 30.'),
      ),
    ),
    filmTrim: v.optional(
      v.pipe(
        allowance,
        v.description('By how much a strip of film reaches over each edge of its zone, mm; absent: 30.'),
      ),
    ),
    filmSeamClear: v.optional(
      v.pipe(
        allowance,
        v.description(
          'No seam of film nearer than this to a joint of panels or of the ground, mm; absent: 50.',
        ),
      ),
    ),
    pieces: v.optional(
      v.pipe(
        v.array(piece),
        v.maxLength(pieceKinds.length),
        v.description('In what packs battens, beads and the like are sold; each kind once.'),
      ),
    ),
    sundries: v.optional(
      v.pipe(
        v.array(sundry),
        v.maxLength(limits.mostProducts),
        v.description('Absent: masking tape along the edges of zones.'),
      ),
    ),
  }),
  v.description('What quantities are counted by.'),
);

export type QuantitiesSettings = v.InferOutput<typeof quantitiesSettings>;
export type PieceKind = (typeof pieceKinds)[number];
export type Sundry = v.InferOutput<typeof sundry>;
export type MeasurementRuleId = (typeof measurementRuleIds)[number];
