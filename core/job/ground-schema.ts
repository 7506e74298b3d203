import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { coordinate, size, text } from './schema-values';

/*
 * What a wall is made of and in what state, and where something may be screwed through it. Every field is optional:
 * what nobody has recorded stays out, and findings and the offer say so.
 */

const figure = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1_000));

export const groundMaterials = [
  'bare-plaster',
  'gypsum-board',
  'sound-paint',
  'old-coating',
  'concrete',
  'brick',
  'timber',
  'glass',
  'metal',
] as const;

export const suctions = ['none', 'normal', 'strong'] as const;
export const moistureUnits = ['CM-%', '%', 'digits'] as const;
export const adhesionTests = ['ISO 16276-2', 'ASTM D3359', 'ISO 4624', 'EN 1542'] as const;
export const exposures = ['dry', 'damp', 'outdoor', 'heated-behind'] as const;

/**
 * Classes of EN 13501-1 for building products (from memory): A1, A2 to D with smoke s1 to s3 and droplets d0 to d2,
 * E with or without d2, F; `none` where nothing is required.
 */
export const reactionToFire = /^(none|A1|(A2|B|C|D)-s[123],d[012]|E|E-d2|F)$/;

export const groundSchema = v.pipe(
  namedFields({
    material: v.optional(
      v.pipe(text, v.description(`One of ${groundMaterials.join(', ')}, or any other words.`)),
    ),
    age: v.optional(v.pipe(text, v.description('Of the coating, as it was told.'))),
    state: v.optional(v.pipe(text, v.description('Of the coating, as it was seen.'))),
    hollow: v.optional(v.pipe(figure, v.description('Deepest hollow under a straightedge of 2 m, mm.'))),
    suction: v.optional(v.picklist(suctions)),
    suctionTest: v.optional(v.pipe(text, v.description('How the suction was tested.'))),
    moisture: v.optional(
      v.pipe(
        namedFields({ value: figure, unit: v.picklist(moistureUnits), method: v.optional(text) }),
        v.description(
          'By the carbide method (CM-%), by weight (%), or as an electronic instrument shows it (digits).',
        ),
      ),
    ),
    adhesion: v.optional(
      v.pipe(
        namedFields({ test: v.picklist(adhesionTests), result: figure }),
        v.description(
          'Of an old coating: the class of a cross-cut or tape test (ISO 16276-2: 0 best, 5 worst; ASTM D3359: 5 best, 0 worst), or a pull-off strength in N/mm² (ISO 4624, EN 1542).',
        ),
      ),
    ),
    exposure: v.optional(v.picklist(exposures)),
    escapeRoute: v.optional(v.pipe(v.boolean(), v.description('Whether the wall is on an escape route.'))),
    fire: v.optional(
      v.pipe(
        v.string(),
        v.regex(reactionToFire),
        v.description('Required reaction to fire, as in EN 13501-1, such as B-s1,d0; or none.'),
      ),
    ),
  }),
  v.description('The state of the wall as it was found; absent fields are not recorded.'),
);

export const fixingPointKinds = ['stud', 'pattress', 'hole'] as const;

export const fixingPointSchema = v.pipe(
  namedFields({
    id: v.pipe(v.string(), v.minLength(1), v.maxLength(limits.longestId)),
    kind: v.picklist(fixingPointKinds),
    x: coordinate,
    y: coordinate,
    width: size,
    height: v.optional(v.pipe(size, v.description('Of a stud or pattress; a hole is round.'))),
    name: v.optional(text),
  }),
  v.description(
    'A place where something may be screwed through: a stud or pattress by its lower left corner, a hole by its middle and diameter.',
  ),
);

export type Ground = v.InferOutput<typeof groundSchema>;
export type FixingPoint = v.InferOutput<typeof fixingPointSchema>;
