import * as v from 'valibot';
import { namedFields } from './named-fields';
import { allowance, size, text } from './schema-values';

/* How a wall will look: colours of its faces, the skirting along its foot. */

export const finishColour = v.pipe(
  namedFields({
    srgb: v.pipe(
      v.string(),
      v.regex(/^#[0-9A-Fa-f]{6}$/, 'must be a colour such as #e8e2d4'),
      v.description('Six hexadecimal digits after #: red, green and blue of sRGB (IEC 61966-2-1).'),
    ),
    name: v.optional(v.pipe(text, v.description('What it is called where it is bought.'))),
  }),
  v.description('Colour of a finished face; absent: as such a finish usually is.'),
);

export const skirting = v.pipe(
  namedFields({
    height: size,
    depth: v.optional(v.pipe(allowance, v.description('How far it stands out of the wall, mm.')), 15),
    colour: v.optional(finishColour),
  }),
  v.description('The board along the foot of the wall; absent: none is shown.'),
);

export type FinishColour = v.InferOutput<typeof finishColour>;
export type Skirting = v.InferOutput<typeof skirting>;
