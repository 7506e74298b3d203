import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { allowance, coordinate, size } from './schema-values';

/** A kind of fitting that the user has made: what a new one of it is until someone measures it. */
export const ownKind = namedFields({
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(limits.longestKindName)),
  round: v.optional(
    v.pipe(v.boolean(), v.description('A circle of diameter `width`; `height` is left out.')),
  ),
  width: size,
  height: v.optional(v.pipe(size, v.description('Absent: as its width.'))),
  floor: v.optional(
    v.pipe(coordinate, v.description('From the floor to its lower edge; of a round one, to its middle.')),
    0,
  ),
  clearance: v.optional(allowance, 0),
  depth: v.optional(
    v.pipe(allowance, v.description('How far it stands out of the wall; absent or 0: flush with it.')),
  ),
  electric: v.optional(v.pipe(v.boolean(), v.description('It has live parts behind its plate.'))),
});
