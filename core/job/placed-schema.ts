import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { allowance, coordinate, identifier, pair, size, text } from './schema-values';

/* Outlines, and what is placed on a wall: openings and fittings. */

const arcVertex = v.pipe(
  namedFields({ arcTo: pair, via: pair }),
  v.description('A circular arc from the vertex before to `arcTo`, through `via`.'),
);
export const vertexSchema = v.union([pair, arcVertex]);
export const verticesSchema = v.pipe(v.array(vertexSchema), v.minLength(3), v.maxLength(limits.mostVertices));

const circle = v.pipe(
  namedFields({ x: coordinate, y: coordinate, diameter: size }),
  v.description('A circle about its middle.'),
);

export const locked = v.optional(
  v.pipe(v.boolean(), v.description('It is neither moved, resized nor deleted until it is unlocked.')),
);

/** A rectangle (x, y its lower left), or a circle, or a free shape; `check.ts` holds that it is exactly one. */
const placed = {
  x: v.optional(coordinate),
  y: v.optional(coordinate),
  width: v.optional(size),
  height: v.optional(size),
  circle: v.optional(circle),
  shape: v.optional(verticesSchema),
  clearance: v.optional(
    v.pipe(allowance, v.description('By how much no panel comes near it, on every side.')),
    0,
  ),
  locked,
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

export const opening = namedFields({
  id: identifier,
  kind: v.pipe(text, v.description(`One of ${openingKinds.join(', ')}; any other is treated as free.`)),
  name: v.optional(text),
  ...placed,
  reveal: v.optional(
    v.pipe(
      allowance,
      v.description('Depth of its reveals, where they are coated with the wall; absent: they are not.'),
    ),
  ),
  /** Doors: the side the hinges are on, seen square-on. */
  hinge: v.optional(v.picklist(['left', 'right'])),
  /** Doors: whether the leaf comes towards whoever looks at the wall. */
  swing: v.optional(v.picklist(['towards', 'away'])),
  /** Doors: height of the handle above the door's foot. */
  handle: v.optional(size),
  stop: v.optional(v.pipe(v.boolean(), v.description('Doors: a stop keeps the open leaf off the wall.'))),
});

export const fitting = namedFields({
  id: identifier,
  kind: v.pipe(
    text,
    v.description(
      `One of ${fittingKinds.join(', ')}, or the name of one of the job's own kinds; any other is treated as free.`,
    ),
  ),
  name: v.optional(text),
  ...placed,
});
