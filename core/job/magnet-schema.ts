import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { identifier, length, text } from './schema-values';

/* Magnets as they are bought, and pulls measured with them. Forces in N. */

export const magnetShapes = ['disc', 'pot', 'ring', 'block', 'foil'] as const;
export const magnetMaterials = ['neodymium', 'ferrite'] as const;
export const contacts = ['metal', 'ferrite', 'paper', 'rubber'] as const;

const positive = v.pipe(length, v.gtValue(0));
const span = v.pipe(positive, v.maxValue(limits.largestMagnet));
const thickness = v.pipe(length, v.minValue(0), v.maxValue(limits.largestMagnet));
const force = v.pipe(positive, v.maxValue(limits.largestForce));

const ratedPull = v.pipe(
  namedFields({
    force: v.pipe(force, v.description('N.')),
    thickness: v.pipe(span, v.description('Of the steel it was measured on, mm.')),
    gap: v.pipe(thickness, v.description('Between the magnet with its cover and the steel, mm.')),
  }),
  v.description("The maker's pull; without what it was measured on it says nothing of a thin sheet."),
);

const cup = v.pipe(
  namedFields({
    magnet: v.optional(v.pipe(span, v.description('Diameter of the magnet in it, mm.'))),
    wall: v.optional(v.pipe(span, v.description('Thickness of its wall at the rim, mm.'))),
    floor: v.optional(v.pipe(span, v.description('Thickness of its floor behind the magnet, mm.'))),
    recess: v.optional(
      v.pipe(thickness, v.description("How far the magnet's face lies behind the rim, mm; 0: flush.")),
    ),
  }),
  v.description('The steel cup of a pot, round, without a hole.'),
);

export const magnet = namedFields({
  id: identifier,
  name: v.pipe(text, v.minLength(1)),
  shape: v.optional(v.picklist(magnetShapes), 'disc'),
  diameter: v.pipe(span, v.description('Of a disc, pot or ring; of a block or foil the shorter side, mm.')),
  length: v.optional(v.pipe(span, v.description('Of a block or foil, the longer side, mm.'))),
  bore: v.optional(v.pipe(span, v.description('Of a ring, mm.'))),
  cup: v.optional(cup),
  height: v.pipe(span, v.description('mm.')),
  material: v.optional(v.picklist(magnetMaterials), 'neodymium'),
  remanence: v.optional(
    v.pipe(positive, v.maxValue(2), v.description('T; the least that the data sheet gives.')),
    1.19,
  ),
  recoil: v.optional(
    v.pipe(length, v.minValue(1), v.maxValue(2), v.description('Relative recoil permeability.')),
    1.05,
  ),
  contact: v.optional(v.pipe(v.picklist(contacts), v.description('What touches the wall.')), 'metal'),
  cover: v.optional(
    v.pipe(thickness, v.description('Of rubber or another cover on the face that meets the wall, mm.')),
    0,
  ),
  rated: v.optional(ratedPull),
  ratedPerArea: v.optional(
    v.pipe(
      positive,
      v.maxValue(1_000),
      v.description("Of foil: the maker's pull, N/cm², on the steel and across the gap of `rated`."),
    ),
  ),
  price: v.optional(v.pipe(length, v.minValue(0), v.maxValue(limits.highestPrice))),
});

export const pullTest = v.pipe(
  namedFields({
    id: identifier,
    magnet: v.pipe(identifier, v.description('Id of a magnet.')),
    between: v.optional(
      v.pipe(thickness, v.description("What lay between magnet and wall beside the magnet's cover, mm.")),
      0,
    ),
    readings: v.pipe(
      v.array(v.pipe(length, v.minValue(0), v.maxValue(limits.largestForce))),
      v.minLength(1),
      v.maxLength(limits.mostReadings),
      v.description('N, straight off the finished wall, each at another place well away from edges.'),
    ),
    date: v.optional(v.pipe(text, v.description('ISO 8601 day.'))),
    by: v.optional(text),
  }),
  v.description('A magnet pulled straight off the finished wall of this zone.'),
);

export type MagnetRecord = v.InferOutput<typeof magnet>;
export type PullTestRecord = v.InferOutput<typeof pullTest>;
