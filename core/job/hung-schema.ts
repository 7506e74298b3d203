import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { locked } from './placed-schema';
import { allowance, coordinate, identifier, length, pair, size, text } from './schema-values';

/*
 * What hangs on a wall by magnets, and where people are under it. Weights in kg, as scales show them.
 */

export const uses = ['light-at-reach', 'handled', 'could-hurt'] as const;
export const faceConditions = ['clean-dry', 'dusty'] as const;
export const peopleBelowKinds = ['bed', 'seat', 'play-area', 'walkway', 'way-out'] as const;

const weight = v.pipe(length, v.minValue(0), v.maxValue(limits.heaviestItem));
const reach = v.pipe(allowance, v.description("From the wall's face to where the weight acts, mm."));
const fromMiddle = v.pipe(
  coordinate,
  v.description("From the item's middle to the right, mm; absent: at its middle."),
);

const load = v.pipe(
  namedFields({ weight, reach, x: v.optional(fromMiddle) }),
  v.description('What stands or hangs on it at most, at its front edge if it can stand there, kg.'),
);

const pull = v.pipe(
  namedFields({
    force: v.pipe(length, v.minValue(0), v.maxValue(limits.largestForce), v.description('N.')),
    angle: v.pipe(
      length,
      v.minValue(0),
      v.maxValue(90),
      v.description('Degrees: 0 straight down, 90 straight off the wall.'),
    ),
    reach,
    x: v.optional(fromMiddle),
    y: v.optional(v.pipe(coordinate, v.description("From the item's lower edge, mm; absent: its middle."))),
  }),
  v.description('How hard somebody pulls at it, as at a cord, a flap or a drawer.'),
);

const itemMagnets = v.pipe(
  namedFields({
    magnet: v.pipe(identifier, v.description('Id of a magnet.')),
    places: v.pipe(
      v.array(pair),
      v.maxLength(limits.mostMagnetsOfItem),
      v.description("Centres from the item's lower left corner, mm."),
    ),
    between: v.optional(
      v.pipe(allowance, v.description('Paper or card between magnet and wall, mm; absent: none.')),
    ),
  }),
  v.description('The magnets that hold it.'),
);

export const hungItem = v.pipe(
  namedFields({
    id: identifier,
    kind: v.pipe(text, v.description('One of the ready kinds, or the name of one of `hungKinds`.')),
    name: v.optional(text),
    x: v.pipe(coordinate, v.description('Of its lower left corner.')),
    y: coordinate,
    width: size,
    height: size,
    depth: v.optional(v.pipe(allowance, v.description('How far it stands out of the wall, mm.')), 0),
    weight: v.optional(v.pipe(weight, v.description('Its own, kg; absent: not known.'))),
    reach: v.optional(
      v.pipe(
        allowance,
        v.description("Of its own centre of mass from the wall's face, mm; absent: half its depth."),
      ),
    ),
    load: v.optional(load),
    pull: v.optional(pull),
    magnets: v.optional(itemMagnets),
    restsOnWall: v.optional(
      v.pipe(
        v.boolean(),
        v.description('Its lower edge bears on the wall; absent or false: only the magnets do.'),
      ),
    ),
    use: v.optional(
      v.pipe(v.picklist(uses), v.description('What its fall would mean; absent: as its kind.')),
    ),
    condition: v.optional(
      v.pipe(
        v.picklist(faceConditions),
        v.description('Of the face under its magnets; absent: as the finish usually is.'),
      ),
    ),
    friction: v.optional(
      v.pipe(
        length,
        v.gtValue(0),
        v.maxValue(2),
        v.description('Measured here: the least force at which a magnet slips, over its pull.'),
      ),
    ),
    proof: v.optional(
      v.pipe(weight, v.description('Weight that it bore at this place in a test, itself counted, kg.')),
    ),
    stop: v.optional(
      v.pipe(v.boolean(), v.description('Something mechanical catches it should the magnets let go.')),
    ),
    fixingPoints: v.optional(
      v.pipe(
        v.array(identifier),
        v.maxLength(limits.mostMagnetsOfItem),
        v.description('Ids of the fixing points that it is screwed to; its magnets then only keep it still.'),
      ),
    ),
    marking: v.optional(
      v.pipe(
        namedFields({ zone: identifier, marking: identifier }),
        v.description('The marking on which it is moved about, as a piece of a game is.'),
      ),
    ),
    pieces: v.optional(
      v.pipe(
        v.number(),
        v.integer(),
        v.minValue(1),
        v.maxValue(10_000),
        v.description('How many alike there are; absent: one.'),
      ),
    ),
    locked,
  }),
  v.description('A thing that hangs on the wall by magnets.'),
);

export const hungKind = v.pipe(
  namedFields({
    name: v.pipe(v.string(), v.minLength(1), v.maxLength(limits.longestKindName)),
    item: v.pipe(
      namedFields({
        width: size,
        height: size,
        depth: v.optional(allowance, 0),
        weight: v.optional(weight),
        reach: v.optional(allowance),
        load: v.optional(load),
        pull: v.optional(pull),
        magnets: v.optional(itemMagnets),
        restsOnWall: v.optional(v.boolean()),
        use: v.optional(v.picklist(uses)),
      }),
      v.description('What a new one is until somebody measures it.'),
    ),
    piece: v.optional(
      v.pipe(
        v.boolean(),
        v.description('It is moved about on the marking that it is put on, as a piece of a game is.'),
      ),
    ),
  }),
  v.description('A kind of hung item that the user has made.'),
);

export const peopleBelow = v.pipe(
  namedFields({
    id: identifier,
    kind: v.picklist(peopleBelowKinds),
    x: v.pipe(coordinate, v.description('Of its left end along the wall.')),
    width: size,
    y: v.optional(v.pipe(coordinate, v.description('From this height up; absent: from the floor.'))),
  }),
  v.description('A stretch of the wall under which somebody lies, sits, plays or passes.'),
);

export const holdingMap = v.pipe(
  namedFields({
    magnet: v.optional(v.pipe(identifier, v.description('Id of a magnet; absent: N42-20x5.'))),
    reach: v.optional(
      v.pipe(allowance, v.description("From the wall's face to the hook's weight, mm; absent: 30.")),
    ),
    use: v.optional(
      v.pipe(
        v.picklist(uses),
        v.description("What the hook's fall would mean; absent: a light thing at reach height."),
      ),
    ),
    forClient: v.optional(
      v.pipe(v.boolean(), v.description('true: the client view shows where the magnet holds.')),
    ),
  }),
  v.description('What the holding map of each wall is drawn for.'),
);

export type HoldingMapSettings = v.InferOutput<typeof holdingMap>;
export type HungItem = v.InferOutput<typeof hungItem>;
export type HungKind = v.InferOutput<typeof hungKind>;
export type PeopleBelow = v.InferOutput<typeof peopleBelow>;
export type Use = (typeof uses)[number];
