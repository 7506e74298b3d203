import type { BuildUp, EdgeEnd, Layer, Product } from '../product-schema';
import type { Job } from '../schema';
import { figure, isSame, told, type Difference, type DifferenceSubject } from './difference';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists } from './match';

/* Products, build-ups of the job's own, and how edges of zones end. */

const productWords: FieldList = {
  name: { label: 'name' },
  layer: { label: 'layer', say: inWords },
  unit: { label: 'unit', say: String },
  packs: { label: 'packs', say: packsInWords },
  spreadingRate: { label: 'spreading rate, m² a unit,' },
  volumeSolids: { label: 'solids by volume', say: (value) => `${String(value)} %` },
  dryFilm: { label: 'dry film', say: (value) => `${String(value)} µm` },
  thickness: { label: 'thickness', say: (value) => `${String(value)} mm` },
  density: { label: 'density', say: (value) => `${String(value)} kg/l` },
  weight: { label: 'weight', say: (value) => `${String(value)} kg/m²` },
  shearStrength: { label: 'lap shear', say: (value) => `${String(value)} N/mm²` },
  peelStrength: { label: 'peel', say: (value) => `${String(value)} N/mm` },
  rollWidth: { label: 'width of the roll', unit: 'mm' },
  coats: { label: 'coats' },
  drying: { label: 'drying', say: inWords },
  mixing: { label: 'mixing', say: mixingInWords },
  touchDry: { label: 'touch dry', say: hoursInWords },
  recoatLeast: { label: 'earliest next coat', say: hoursInWords },
  recoatMost: { label: 'latest next coat', say: hoursInWords },
  cure: { label: 'cure', say: hoursInWords },
  temperatureLeast: { label: 'least temperature', say: (value) => `${String(value)} °C` },
  humidityMost: { label: 'greatest humidity', say: (value) => `${String(value)} %` },
  grounds: { label: 'grounds', say: listInWords },
  tool: { label: 'tool', say: (tool) => inWords((tool as { kind: string }).kind) },
  loss: { label: 'loss', say: (share) => `${figure(Number(share) * 100)} %` },
  pace: { label: 'pace, m² an hour,' },
  cautions: { label: 'cautions', say: listInWords },
  note: { label: 'note' },
  batch: { label: 'batch' },
  typical: {
    label: 'values',
    usual: false,
    whole: (to) => (to ? 'has typical values now' : 'no longer has typical values'),
  },
};

/** Products that came, went or have other values. */
export function productDifferences(before: Job, after: Job): Difference[] {
  return listed(before.products, after.products, {
    subject: 'product',
    name: ({ id, name }: Product) => `Product ${id} (${name})`,
    size: ({ layer }) => `for ${inWords(layer)}`,
    fields: (was, is) => fieldDifferences(was, is, productWords, ['id']).map(({ says }) => says),
  });
}

const buildUpWords: FieldList = {
  name: { label: 'name' },
  kind: { label: 'kind', say: inWords },
  layers: { label: 'layers', say: layersInWords },
};

/** Build-ups of the job's own that came, went or have other layers. */
export function buildUpDifferences(before: Job, after: Job): Difference[] {
  return listed(before.buildUps, after.buildUps, {
    subject: 'build-up',
    name: ({ id, name }: BuildUp) => `Build-up ${id}${name ? ` (${name})` : ''}`,
    size: ({ layers }) => layersInWords(layers),
    fields: (was, is) => fieldDifferences(was, is, buildUpWords, ['id']).map(({ says }) => says),
  });
}

/** `edge 2 stop bead, edge 3 feather 300 mm` */
export function edgeEndsInWords(of: unknown): string {
  const ends = of as EdgeEnd[];
  const said = ends.map(({ edge, end, width }) => {
    return `edge ${edge} ${inWords(end)}${width === undefined ? '' : ` ${figure(width)} mm`}`;
  });
  return said.join(', ') || 'as usual';
}

interface Told<T> {
  readonly subject: DifferenceSubject;
  readonly name: (thing: T) => string;
  readonly size: (thing: T) => string;
  readonly fields: (was: T, is: T) => string[];
}

function listed<T extends { readonly id: string }>(
  before: readonly T[] = [],
  after: readonly T[] = [],
  { subject, name, size, fields }: Told<T>,
): Difference[] {
  const { pairs, added, removed } = matchLists(before, after, (was, is) =>
    isSame({ ...was, id: '' }, { ...is, id: '' }) ? 0 : undefined,
  );
  const say = (kind: Difference['kind'], thing: T, says: string): Difference => {
    return { kind, subject, object: thing.id, text: told(name(thing), says), places: [] };
  };
  return [
    ...pairs.flatMap(([was, is]) => {
      const renumbered = was.id === is.id ? [] : [`was listed as ${was.id} before`];
      return [...renumbered, ...fields(was, is)].map((says) => say('changed', is, says));
    }),
    ...added.map((thing) => say('added', thing, `is new: ${size(thing)}`)),
    ...removed.map((thing) => say('removed', thing, `is gone: it was ${size(thing)}`)),
  ];
}

function layersInWords(of: unknown): string {
  const layers = (of as Layer[]).map(({ kind, product, coats, thickness, over }) =>
    [
      inWords(kind),
      ...(product === undefined ? [] : [`“${product}”`]),
      ...(coats === undefined ? [] : [`${coats} ×`]),
      ...(thickness === undefined ? [] : [`${thickness} mm`]),
      ...(over === 'face' ? [] : [`over ${over}`]),
    ].join(' '),
  );
  return layers.join(', ') || 'none';
}

function packsInWords(of: unknown): string {
  const packs = of as Product['packs'];
  return packs.map(({ size, price }) => `${size} at ${price}`).join(', ') || 'none';
}

function mixingInWords(of: unknown): string {
  const { parts, by, potLife } = of as NonNullable<Product['mixing']>;
  return `${parts[0]} : ${parts[1]} by ${by}, pot life ${potLife} min`;
}

function hoursInWords(hours: unknown): string {
  return `${String(hours)} h`;
}

function listInWords(of: unknown): string {
  return (of as string[]).map((text) => `“${text}”`).join(', ') || 'none';
}

function inWords(kind: unknown): string {
  return String(kind).replaceAll('-', ' ');
}
