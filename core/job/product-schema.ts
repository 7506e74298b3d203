import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { identifier, length, text } from './schema-values';

/*
 * Products, as their users' data sheets give them, and build-ups: the ordered layers of a zone. Absent fields are not
 * known; what needs them says so.
 */

/** In the order in which they can lie on a wall; `degreasing`, `keying` and `sanding` take nothing away that is measured. */
export const layerKinds = [
  'degreasing',
  'keying',
  'primer',
  'adhesive',
  'steel',
  'metal-primer',
  'reinforcement',
  'bonding-coat',
  'filler',
  'sanding',
  'sealer',
  'magnetic-coating',
  'magnetic-film',
  'smoothing',
  'writable',
  'clear-writable',
  'chalk',
  'decorative',
  'writable-film',
  'glass-film',
] as const;

export const productUnits = ['l', 'kg', 'm2', 'm', 'piece'] as const;
export const dryingKinds = ['water-loss', 'reaction', 'none'] as const;
export const toolKinds = [
  'roller',
  'brush',
  'notched-trowel',
  'trowel',
  'squeegee',
  'knife',
  'sprayer',
] as const;
export const notchShapes = ['square', 'triangular'] as const;

const positive = v.pipe(length, v.gtValue(0), v.maxValue(1_000_000));
const amount = v.pipe(length, v.minValue(0), v.maxValue(1_000_000));
const hours = v.pipe(amount, v.description('Hours.'));
const degrees = v.pipe(length, v.minValue(-60), v.maxValue(150));
const share = v.pipe(length, v.minValue(0), v.ltValue(1));
const price = v.pipe(
  length,
  v.minValue(0),
  v.maxValue(limits.highestPrice),
  v.description("In the job's currency, rounded to its minor unit on reading."),
);

export const pack = namedFields({
  size: v.pipe(
    positive,
    v.description("What it holds, in the product's unit; of a two-component product both together."),
  ),
  price: v.optional(price, 0),
});

const mixing = v.pipe(
  namedFields({
    parts: v.strictTuple([positive, positive]),
    by: v.optional(v.picklist(['volume', 'weight']), 'volume'),
    potLife: v.pipe(positive, v.description('Minutes.')),
    potLifeAt: v.optional(v.pipe(degrees, v.description('°C.')), 20),
    openTime: v.optional(v.pipe(positive, v.description('Minutes.'))),
  }),
  v.description('Of a two-component product.'),
);

const notch = v.pipe(
  namedFields({
    shape: v.optional(v.picklist(notchShapes), 'square'),
    bridge: v.pipe(amount, v.description('a, width of a tooth, mm.')),
    width: v.pipe(positive, v.description('b, mm.')),
    depth: v.pipe(positive, v.description('c, mm.')),
    tilt: v.optional(
      v.pipe(positive, v.maxValue(90), v.description('Degrees between trowel and wall; absent: 90.')),
    ),
  }),
  v.description('A row of notches, letters as in TKB Technical Briefing Note 6.'),
);

const tool = namedFields({
  kind: v.picklist(toolKinds),
  nap: v.optional(v.pipe(positive, v.description('Of a roller, mm.'))),
  notch: v.optional(notch),
});

export const product = namedFields({
  id: identifier,
  name: v.pipe(text, v.minLength(1)),
  layer: v.picklist(layerKinds),
  unit: v.picklist(productUnits),
  packs: v.optional(v.pipe(v.array(pack), v.maxLength(limits.mostPacks)), []),
  spreadingRate: v.optional(v.pipe(positive, v.description('m² a unit covers in one coat.'))),
  volumeSolids: v.optional(v.pipe(positive, v.maxValue(100), v.description('Per cent.'))),
  dryFilm: v.optional(v.pipe(positive, v.description('Dry film thickness of one coat, µm.'))),
  thickness: v.optional(
    v.pipe(positive, v.description('Of one coat of filler or adhesive, or of a film, mm.')),
  ),
  density: v.optional(v.pipe(positive, v.description('As it is used, kg/l.'))),
  shearStrength: v.optional(
    v.pipe(positive, v.description('Of an adhesive: lap shear as its data sheet states it, N/mm².')),
  ),
  peelStrength: v.optional(
    v.pipe(positive, v.description('Of an adhesive: peel as its data sheet states it, N per mm of width.')),
  ),
  weight: v.optional(v.pipe(positive, v.description('Of what is laid by the area, such as a film, kg/m².'))),
  rollWidth: v.optional(v.pipe(positive, v.description('Of film, fleece or tape, mm.'))),
  coats: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20)), 1),
  drying: v.optional(v.picklist(dryingKinds), 'none'),
  mixing: v.optional(mixing),
  touchDry: v.optional(hours),
  recoatLeast: v.optional(hours),
  recoatMost: v.optional(hours),
  cure: v.optional(hours),
  temperatureLeast: v.optional(v.pipe(degrees, v.description('Of air and wall, °C.'))),
  humidityMost: v.optional(v.pipe(amount, v.maxValue(100), v.description('Relative, per cent.'))),
  grounds: v.optional(v.pipe(v.array(text), v.maxLength(50), v.description('What it may lie on, in words.'))),
  tool: v.optional(tool),
  loss: v.optional(
    v.pipe(share, v.description('Share that does not reach the wall; need is divided by 1 − loss.')),
  ),
  pace: v.optional(v.pipe(positive, v.description('m² one person does in an hour, in one coat.'))),
  cautions: v.optional(v.pipe(v.array(text), v.maxLength(50))),
  note: v.optional(v.pipe(text, v.description('What the data sheet says beside.'))),
  batch: v.optional(text),
  typical: v.optional(
    v.pipe(
      v.boolean(),
      v.description('true: its values are typical ones, to be replaced by the data sheet.'),
    ),
  ),
});

export const layerExtents = ['face', 'joints', 'edges', 'backs'] as const;

const layer = namedFields({
  kind: v.picklist(layerKinds),
  product: v.optional(
    v.pipe(identifier, v.description('Id of a product; absent: work alone, or the stock sheet of `steel`.')),
  ),
  coats: v.optional(
    v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20), v.description("Absent: the product's.")),
  ),
  thickness: v.optional(
    v.pipe(positive, v.description("Of all its coats together, mm; absent: the product's.")),
  ),
  over: v.optional(
    v.pipe(
      v.picklist(layerExtents),
      v.description(
        'The whole face, joints between panels, cut edges of steel, or the backs of its panels before they are fixed.',
      ),
    ),
    'face',
  ),
});

export const buildUp = v.pipe(
  namedFields({
    id: identifier,
    name: v.optional(text, ''),
    kind: v.pipe(
      text,
      v.description('The build-up of zones that can have these layers, such as steel-panel.'),
    ),
    layers: v.pipe(
      v.array(layer),
      v.maxLength(limits.mostLayers),
      v.description('From the bare wall to the finish.'),
    ),
  }),
  v.description('Layers that take the place of the ready ones.'),
);

export const edgeEnds = ['feather', 'stop-bead', 'trim', 'corner'] as const;

export const edgeEnd = v.pipe(
  namedFields({
    edge: v.pipe(
      v.number(),
      v.integer(),
      v.minValue(1),
      v.maxValue(limits.mostVertices),
      v.description('Of the zone: from its corner of this number to the next.'),
    ),
    end: v.picklist(edgeEnds),
    width: v.optional(v.pipe(positive, v.description('Of a feather, mm.'))),
  }),
  v.description('How the layers of a zone end along one of its edges.'),
);

export type Product = v.InferOutput<typeof product>;
export type ProductPack = Product['packs'][number];
export type BuildUp = v.InferOutput<typeof buildUp>;
export type Layer = v.InferOutput<typeof layer>;
export type LayerKind = (typeof layerKinds)[number];
export type EdgeEnd = v.InferOutput<typeof edgeEnd>;
