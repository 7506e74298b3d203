import * as v from 'valibot';
import { finishColour } from './colour-schema';
import { handChoice } from './hand-schema';
import * as limits from './limits';
import { pullTest } from './magnet-schema';
import { marking } from './marking-schema';
import { finishLevels } from './offer-schema';
import { namedFields } from './named-fields';
import { locked, verticesSchema } from './placed-schema';
import { edgeEnd } from './product-schema';
import { allowance, coordinate, identifier, length, text } from './schema-values';

/* Zones, how their panels are laid, and how one runs round a corner. */

export const startNames = [
  'best',
  'lower-left',
  'lower-right',
  'upper-left',
  'upper-right',
  'centre-on-joint',
  'centre-on-panel',
] as const;

export const layout = namedFields({
  stock: v.pipe(identifier, v.description('Id of the stock sheet that is laid.')),
  stocks: v.optional(v.pipe(v.array(identifier), v.description('Ids of mixed formats.'))),
  cutFrom: v.optional(
    v.pipe(v.array(identifier), v.description('Ids of other stock that cut panels may come from.')),
  ),
  start: v.optional(
    v.pipe(
      v.union([v.picklist(startNames), namedFields({ x: coordinate, y: coordinate })]),
      v.description('The lower left corner of a panel cell, or where to find it.'),
    ),
    'best',
  ),
  turned: v.optional(v.pipe(v.boolean(), v.description("Swaps the stock sheet's width and height.")), false),
  jointGap: v.optional(v.pipe(length, v.minValue(0), v.maxValue(limits.largestJointGap)), 0),
  /** Fraction of the stock sheet's width by which each course is shifted against the one below. */
  stagger: v.optional(
    v.pipe(
      length,
      v.minValue(0),
      v.ltValue(1),
      v.description("Fraction of the stock sheet's width by which each course is shifted."),
    ),
    0,
  ),
  leastWidth: v.optional(v.pipe(allowance, v.description('A narrower panel is a sliver.')), 50),
  clearOfCorners: v.optional(
    v.pipe(
      allowance,
      v.description("No joint nearer than this to an opening's corner; 0 or absent: anywhere."),
    ),
  ),
  clearOfBoardJoints: v.optional(
    v.pipe(
      allowance,
      v.description('No joint nearer than this to a board joint beside it; 0 or absent: anywhere.'),
    ),
  ),
  startEachPart: v.optional(
    v.pipe(v.boolean(), v.description('Every connected part of the zone has a best start of its own.')),
  ),
  redivide: v.optional(
    v.pipe(
      v.boolean(),
      v.description(
        'Slivers are joined or shared out with their neighbours; absent: only from the best start.',
      ),
    ),
  ),
  /** mm². */
  leastArea: v.optional(
    v.pipe(length, v.minValue(0), v.description('Square millimetres; a smaller piece is left out.')),
  ),
  byHand: v.optional(
    v.pipe(
      v.array(handChoice),
      v.maxLength(limits.mostHandChoices),
      v.description('What was chosen by hand, in the order in which it was; absent: nothing.'),
    ),
  ),
});

export const runLines = ['continue', 'anew'] as const;

export const runsOn = v.pipe(
  namedFields({
    wall: identifier,
    zone: identifier,
    lines: v.optional(
      v.pipe(
        v.picklist(runLines),
        v.description('Whether the panel lines of this zone go on there, or that zone is laid by itself.'),
      ),
      'continue',
    ),
    skip: v.optional(
      v.pipe(
        allowance,
        v.description(
          'By how much the lines do not count at the corner, so as to leave out rims, steel or a saw cut; absent: 0, lines are counted on the faces of the walls.',
        ),
      ),
    ),
  }),
  v.description(
    "The zone goes on round the corner at the wall's right end, as a zone of the wall that its corner leads to.",
  ),
);

export const zone = namedFields({
  id: identifier,
  name: v.optional(text, ''),
  shape: verticesSchema,
  holes: v.optional(v.pipe(v.array(verticesSchema), v.maxLength(limits.mostObjectsOfAKind)), []),
  buildUp: v.pipe(text, v.description('What the zone is made of; one with steel panels has a layout.')),
  layers: v.optional(
    v.pipe(
      identifier,
      v.description("Id of one of the job's build-ups; absent: the ready layers of `buildUp`."),
    ),
  ),
  edges: v.optional(
    v.pipe(
      v.array(edgeEnd),
      v.maxLength(limits.mostVertices),
      v.description('Edges whose end was chosen; others end as is usual there.'),
    ),
  ),
  finishLevel: v.optional(
    v.pipe(
      v.picklist(finishLevels),
      v.description("Level of finish, where it is another than the offer's; absent: the offer's."),
    ),
  ),
  colour: v.optional(finishColour),
  layout: v.optional(layout),
  runsOn: v.optional(runsOn),
  markings: v.optional(
    v.pipe(
      v.array(marking),
      v.maxLength(limits.mostMarkings),
      v.description('What is ruled, lettered or stuck on the finished zone; absent: nothing.'),
    ),
  ),
  pullTests: v.optional(v.pipe(v.array(pullTest), v.maxLength(limits.mostPullTests))),
  locked,
});

export const zones = v.pipe(v.array(zone), v.maxLength(limits.mostObjectsOfAKind));
