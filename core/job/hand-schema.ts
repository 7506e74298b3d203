import * as v from 'valibot';
import { namedFields } from './named-fields';
import { coordinate, text, identifier } from './schema-values';

/* What may be chosen by hand in the layout of a zone. */

export const handPlace = v.pipe(
  v.union([
    coordinate,
    namedFields({
      of: v.pipe(
        text,
        v.description(
          'What the edge belongs to: opening, fitting, zone, or line (a joint of the ground); any other is a lost place.',
        ),
      ),
      id: v.optional(v.pipe(identifier, v.description('Which one; absent with zone: the own one.'))),
      side: v.optional(v.picklist(['left', 'right', 'bottom', 'top'])),
      by: v.optional(
        v.pipe(coordinate, v.description('How far right of the edge, or above it; absent: on it.')),
      ),
    }),
  ]),
  v.description('Along one axis: a figure from the datum, or an edge that it moves with.'),
);

export const handPoint = namedFields({ x: handPlace, y: handPlace });

export const handKinds = [
  'joint-on-line',
  'no-joints',
  'whole-panel',
  'split',
  'join',
  'no-panel',
  'other-stock',
] as const;

export const handChoice = v.pipe(
  namedFields({
    id: identifier,
    kind: v.pipe(text, v.description(`One of ${handKinds.join(', ')}; any other is kept and not followed.`)),
    direction: v.optional(
      v.pipe(v.picklist(['upright', 'level']), v.description('Of the joint on a line, or of the split.')),
    ),
    at: v.optional(
      v.pipe(
        handPoint,
        v.description(
          'A point of the joint (with stagger: in the course that it is wanted in), of the split, or of a panel.',
        ),
      ),
    ),
    with: v.optional(
      v.pipe(handPoint, v.description('A point of the panel that the one at `at` is joined with.')),
    ),
    stock: v.optional(
      v.pipe(identifier, v.description('Of other-stock: the stock sheet that the panel is cut from.')),
    ),
    left: v.optional(handPlace),
    right: v.optional(handPlace),
    bottom: v.optional(handPlace),
    top: v.optional(handPlace),
  }),
  v.description(
    'One choice by hand. Where no joints may lie: left and right for an upright strip, bottom and top for a level one, all four for a rectangle.',
  ),
);
