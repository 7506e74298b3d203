import * as v from 'valibot';
import { lengthUnits } from '../lengths';
import { finishColour, skirting } from './colour-schema';
import { fixingPointSchema, groundSchema } from './ground-schema';
import { holdingMap, hungItem, hungKind, peopleBelow } from './hung-schema';
import type { handChoice, handPlace, handPoint } from './hand-schema';
import * as limits from './limits';
import { listsById } from './lists-by-id';
import { magnet } from './magnet-schema';
import { namedFields } from './named-fields';
import { offerSchema } from './offer-schema';
import { ownKind } from './own-kind-schema';
import { photo, pin, wallPhoto, type photoPoint } from './photo-schema';
import { fitting, opening, verticesSchema, type vertexSchema } from './placed-schema';
import { allowance, coordinate, identifier, length, pair, size, text } from './schema-values';
import { buildUp, product } from './product-schema';
import { handoverSchema } from './handover-schema';
import { printing } from './printing-schema';
import { programme } from './programme-schema';
import { quantitiesSettings } from './quantities-schema';
import { cutting, rackPiece, stockSheet, type tolerance, type trim } from './stock-schema';
import { zones, type layout, type runsOn, type zone } from './zone-schema';

export { handKinds } from './hand-schema';
export { photoTypes } from './photo-schema';
export { startNames } from './zone-schema';
export { fittingKinds, openingKinds, vertexSchema, verticesSchema } from './placed-schema';

/*
 * The job file, version 1. Every object is loose: a field that is not listed here is kept when the file is
 * opened and saved again. Lengths in mm; x to the right, y up from the wall's datum.
 * What a shape alone cannot say (self-crossing outlines, references to nothing) is checked in `check.ts`.
 * The order of fields here is the order in which a job is written.
 */

const rim = namedFields({
  floor: v.optional(allowance, 0),
  ceiling: v.optional(allowance, 0),
  left: v.optional(allowance, 0),
  right: v.optional(allowance, 0),
});

export const surveyLineKinds = ['board-joint', 'movement-joint', 'cable', 'pipe'] as const;

const surveyLine = v.pipe(
  namedFields({
    id: identifier,
    kind: v.picklist(surveyLineKinds),
    from: pair,
    to: pair,
    width: v.optional(
      v.pipe(allowance, v.description('Of a movement joint: no steel within this width about the line.')),
    ),
  }),
  v.description(
    'A straight line of the survey: a joint between boards or between parts of the building that move; a cable or pipe in the wall, as it was found.',
  ),
);

const cornerNumber = v.pipe(v.number(), v.integer(), v.minValue(1));

const checkMeasure = v.pipe(
  namedFields({ from: cornerNumber, to: cornerNumber, length: size }),
  v.description(
    'A length between two corners of the outline as it was measured, to hold the drawing against; corners count from 1, in their order.',
  ),
);

export const cornerKinds = ['internal', 'external'] as const;

const corner = v.pipe(
  namedFields({
    to: v.pipe(identifier, v.description('Id of the wall whose left end it is, both seen square-on.')),
    kind: v.picklist(cornerKinds),
    angle: v.optional(
      v.pipe(
        length,
        v.minValue(limits.leastCornerAngle),
        v.maxValue(180 - limits.leastCornerAngle),
        v.description(
          'Degrees: of an internal corner across the room, of an external one through the building; absent: 90.',
        ),
      ),
    ),
    rise: v.optional(
      v.pipe(
        coordinate,
        v.description("By how much the other wall's datum level lies above this one's; absent: 0."),
      ),
    ),
  }),
  v.description("The corner where the wall's right end meets another wall."),
);

const hung = v.pipe(
  v.array(hungItem),
  v.maxLength(limits.mostHung),
  v.description('What hangs on the wall by magnets.'),
);

const wall = namedFields({
  id: identifier,
  name: v.optional(text, ''),
  room: v.optional(v.pipe(text, v.description('Panels are bundled and labelled by room.'))),
  corner: v.optional(corner),
  outline: verticesSchema,
  delivery: v.optional(
    v.pipe(text, v.description('Walls of the same delivery are ordered and cut together.')),
  ),
  rim: v.optional(v.pipe(rim, v.description("Clearance from the wall's own edges.")), {
    floor: 0,
    ceiling: 0,
    left: 0,
    right: 0,
  }),
  openings: v.optional(v.pipe(v.array(opening), v.maxLength(limits.mostObjectsOfAKind)), []),
  fittings: v.optional(v.pipe(v.array(fitting), v.maxLength(limits.mostObjectsOfAKind)), []),
  lines: v.optional(v.pipe(v.array(surveyLine), v.maxLength(limits.mostObjectsOfAKind))),
  checkMeasures: v.optional(v.pipe(v.array(checkMeasure), v.maxLength(limits.mostObjectsOfAKind))),
  ground: v.optional(groundSchema),
  fixingPoints: v.optional(v.pipe(v.array(fixingPointSchema), v.maxLength(limits.mostObjectsOfAKind))),
  surveyed: v.optional(
    v.pipe(v.boolean(), v.description('false: put down for a budget, not measured on site.')),
  ),
  surveyedBy: v.optional(text),
  surveyedOn: v.optional(v.pipe(text, v.description('ISO 8601 day.'))),
  colour: v.optional(finishColour),
  skirting: v.optional(skirting),
  zones: v.optional(zones, []),
  hung: v.optional(hung),
  peopleBelow: v.optional(
    v.pipe(
      v.array(peopleBelow),
      v.maxLength(limits.mostObjectsOfAKind),
      v.description('Where people are under the wall; [] where nobody is; absent: nobody has said.'),
    ),
  ),
  photo: v.optional(wallPhoto),
  pins: v.optional(v.pipe(v.array(pin), v.maxLength(limits.mostObjectsOfAKind))),
});

const alternative = v.pipe(
  namedFields({
    id: identifier,
    name: v.optional(text, ''),
    zones: v.optional(
      v.pipe(
        listsById(zones),
        v.description('Zones by the id of their wall; a wall that is not named has none.'),
      ),
      {},
    ),
    hung: v.optional(
      v.pipe(
        listsById(hung),
        v.description('Hung items by the id of their wall; a wall that is not named has none.'),
      ),
    ),
  }),
  v.description('Zones, build-ups, layouts and hung items that could take the place of those on the walls.'),
);

const chosenAlternative = v.pipe(
  namedFields({
    id: identifier,
    name: v.optional(text, ''),
    place: v.optional(
      v.pipe(
        v.number(),
        v.integer(),
        v.minValue(0),
        v.description('How many of the others are listed before it.'),
      ),
    ),
  }),
  v.description('What the alternative is called whose zones stand on the walls.'),
);

/** A frozen record of the job as issued; its results are printed again from here. */
const revision = v.pipe(
  namedFields({
    id: identifier,
    date: text,
    note: v.optional(text, ''),
    job: v.optional(namedFields({})),
    results: v.optional(namedFields({})),
    rack: v.optional(
      v.pipe(
        namedFields({ out: v.optional(v.array(identifier), []), in: v.optional(v.array(rackPiece), []) }),
        v.description('Rack pieces that the issued plan uses up, and offcuts that it leaves.'),
      ),
    ),
  }),
  v.description('A frozen record of the job and its results as issued.'),
);

const temperature = v.pipe(length, v.minValue(-60), v.maxValue(150));

const temperatures = v.pipe(
  namedFields({ low: temperature, high: temperature, atFixing: temperature }),
  v.description('Of the steel, °C: the coldest and warmest it will be, and when it is fixed.'),
);

export const jobSchema = namedFields({
  format: v.literal('lodeplan-job'),
  version: v.literal(1),
  name: v.pipe(text, v.minLength(1)),
  client: v.optional(text, ''),
  reference: v.optional(text, ''),
  revision: v.optional(text, ''),
  /** Date shown on documents, as written by the user (ISO 8601 day); core has no clock. */
  date: v.optional(text, ''),
  currency: v.optional(
    v.pipe(v.string(), v.regex(/^[A-Z]{3}$/), v.description('Three letters, as in ISO 4217.')),
    'EUR',
  ),
  units: v.optional(
    v.pipe(
      v.picklist(lengthUnits),
      v.description('What lengths are shown and typed in; absent: mm. In the file all are mm.'),
    ),
  ),
  stock: v.optional(v.pipe(v.array(stockSheet), v.maxLength(limits.mostStock)), []),
  rack: v.optional(
    v.pipe(
      v.array(rackPiece),
      v.maxLength(limits.mostRackPieces),
      v.description('Offcuts kept from earlier jobs.'),
    ),
    [],
  ),
  products: v.optional(
    v.pipe(
      v.array(product),
      v.maxLength(limits.mostProducts),
      v.description('Products beside the ready ones, or in place of the ready one of the same id.'),
    ),
  ),
  buildUps: v.optional(v.pipe(v.array(buildUp), v.maxLength(limits.mostBuildUps))),
  programme: v.optional(programme),
  temperatures: v.optional(temperatures),
  offer: v.optional(offerSchema),
  quantities: v.optional(quantitiesSettings),
  printing: v.optional(printing),
  handover: v.optional(handoverSchema),
  fittingKinds: v.optional(
    v.pipe(
      v.array(ownKind),
      v.maxLength(limits.mostFittingKinds),
      v.description('Kinds of fitting beside the usual ones; fittings say them by their names.'),
    ),
  ),
  magnets: v.optional(
    v.pipe(
      v.array(magnet),
      v.maxLength(limits.mostMagnets),
      v.description('Magnets beside the ready ones, or in place of the ready one of the same id.'),
    ),
  ),
  hungKinds: v.optional(
    v.pipe(
      v.array(hungKind),
      v.maxLength(limits.mostHungKinds),
      v.description('Kinds of hung item beside the ready ones; items say them by their names.'),
    ),
  ),
  holdingMap: v.optional(holdingMap),
  cutting: v.optional(cutting, { method: 'edge-to-edge', kerf: 0, leastOffcut: [100, 100] }),
  walls: v.optional(v.pipe(v.array(wall), v.maxLength(limits.mostWalls)), []),
  chosenAlternative: v.optional(chosenAlternative),
  alternatives: v.optional(v.pipe(v.array(alternative), v.maxLength(limits.mostAlternatives))),
  revisions: v.optional(v.pipe(v.array(revision), v.maxLength(limits.mostRevisions)), []),
  photos: v.optional(v.pipe(v.array(photo), v.maxLength(limits.mostPhotos))),
});

export type Job = v.InferOutput<typeof jobSchema>;
export type Wall = v.InferOutput<typeof wall>;
export type Opening = v.InferOutput<typeof opening>;
export type Fitting = v.InferOutput<typeof fitting>;
export type OwnKind = v.InferOutput<typeof ownKind>;
export type Zone = v.InferOutput<typeof zone>;
export type Corner = v.InferOutput<typeof corner>;
export type RunsOn = v.InferOutput<typeof runsOn>;
export type Layout = v.InferOutput<typeof layout>;
export type Alternative = v.InferOutput<typeof alternative>;
export type ChosenAlternative = v.InferOutput<typeof chosenAlternative>;
export type StockSheet = v.InferOutput<typeof stockSheet>;
export type CheckMeasure = v.InferOutput<typeof checkMeasure>;
export type Photo = v.InferOutput<typeof photo>;
export type WallPhoto = v.InferOutput<typeof wallPhoto>;
export type PhotoPoint = v.InferOutput<typeof photoPoint>;
export type Pin = v.InferOutput<typeof pin>;
export type SurveyLine = v.InferOutput<typeof surveyLine>;
export type Trim = v.InferOutput<typeof trim>;
export type Tolerance = v.InferOutput<typeof tolerance>;
export type Temperatures = v.InferOutput<typeof temperatures>;
export type RackPiece = v.InferOutput<typeof rackPiece>;
export type CuttingSettings = v.InferOutput<typeof cutting>;
export type Rim = v.InferOutput<typeof rim>;
export type Revision = v.InferOutput<typeof revision>;
export type Vertex = v.InferOutput<typeof vertexSchema>;
export type Start = Layout['start'];
export type HandChoice = v.InferOutput<typeof handChoice>;
export type HandPlace = v.InferOutput<typeof handPlace>;
export type HandPoint = v.InferOutput<typeof handPoint>;
