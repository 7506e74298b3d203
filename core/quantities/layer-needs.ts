import type { ResolvedLayer } from '../build-up/resolve';
import type { Finding } from '../finding';
import { nameOfWall, nameOfZone } from '../job/names';
import type { LayerKind, Product } from '../job/product-schema';
import { figure } from '../lengths';
import { filmNeeds, isFilm } from './film-needs';
import type { StripPlan } from './film-strips';
import { itemOfProduct, type Need, type NeedFor } from './need';
import { coatNeed, volumeNeed, type CoatNeed } from './product-need';
import { withLoss } from './spreading';
import type { ZoneTask } from './zone-task';

export interface ZoneNeeds {
  readonly needs: readonly Need[];
  readonly films: readonly { readonly layer: number; readonly plan: StripPlan }[];
  readonly findings: readonly Finding[];
}

/** What lies on the whole of a layer, hundredths squared. */
export interface LayerArea {
  readonly face: number;
  readonly feather: number;
  readonly reveals: number;
}

/** What the layers of a zone take, coat by coat, in their order; what cannot be worked out is a finding. */
export function layerNeeds(task: ZoneTask): ZoneNeeds {
  const needs: Need[] = [];
  const films: { layer: number; plan: StripPlan }[] = [];
  const findings: Finding[] = [];
  task.layers.forEach((layer, index) => {
    const product = productOf(task, layer, findings);
    if (!product) return;
    if (isFilm(product) && (layer.layer.over ?? 'face') === 'face') {
      const film = filmNeeds(task, layer, index, product, films);
      needs.push(...film.needs);
      if (film.plan) films.push({ layer: index, plan: film.plan });
      findings.push(...film.findings);
      return;
    }
    for (const part of partsOf(task, layer, index, product)) {
      if ('missing' in part.need) {
        findings.push(missingFinding(task, product, part.need.missing));
        break;
      }
      needs.push(lossAdded(needOf(task, layer, index, product, part), product.loss ?? 0));
    }
  });
  return { needs, films, findings };
}

/**
 * Where the layers of a zone lie. Under steel, and on its back and face, only as far as the panels; above it over the
 * whole face and its feathered margin; on reveals what is rolled or brushed on a wall without steel, or above steel.
 */
export function layerArea(
  { measures, layers, featherArea }: Pick<ZoneTask, 'measures' | 'layers' | 'featherArea'>,
  index: number,
): LayerArea {
  const { kind } = layers[index]!.layer;
  const steel = layers.findIndex(({ layer }) => layer.kind === 'steel');
  const hasPanels = steel >= 0 && measures.panels > 0;
  if (hasPanels && onPanels.includes(kind)) return { face: measures.steelArea, feather: 0, reveals: 0 };
  const isAbove = steel < 0 || index > steel;
  const goesRound = isAbove && onReveals.includes(kind);
  return {
    face: measures.faceArea,
    feather: index >= taperedFrom(layers) ? featherArea : 0,
    reveals: goesRound ? measures.reveals.reduce((sum, { area }) => sum + area, 0) : 0,
  };
}

/** From which layer on a build-up has a tapered margin: above steel, else from the first filler; Infinity: none has. */
export function taperedFrom(layers: ZoneTask['layers']): number {
  const steel = layers.findIndex(({ layer }) => layer.kind === 'steel');
  const first = steel >= 0 ? steel + 1 : layers.findIndex(({ layer }) => layer.kind === 'filler');
  return first < 0 ? Infinity : first;
}

/** Layers that lie on panels alone, as far as these go. */
export const onPanels: readonly LayerKind[] = ['adhesive', 'steel', 'metal-primer'];
const onReveals: readonly LayerKind[] = [
  'primer',
  'sealer',
  'magnetic-coating',
  'smoothing',
  'writable',
  'clear-writable',
  'chalk',
  'decorative',
];

interface Part {
  readonly of: NeedFor;
  readonly coat: number;
  readonly need: CoatNeed;
}

function partsOf(task: ZoneTask, layer: ResolvedLayer, index: number, product: Product): Part[] {
  const over = layer.layer.over ?? 'face';
  if (over === 'joints') return jointParts(task, layer, product);
  if (over === 'edges') return edgeParts(task, layer, product);
  if (over === 'backs') return backParts(task, layer, product);
  const { face, feather, reveals } = layerArea(task, index);
  const isBed = layer.layer.kind === 'filler' || layer.layer.kind === 'smoothing';
  const coats = (of: NeedFor, area: number): Part[] =>
    area > 0 ? eachCoat(layer, (coat) => ({ of, coat, need: coatNeed(layer, product, area / 1e10) })) : [];
  return [
    ...coats('face', face),
    // The margin of a filler tapers; what lies over it does not.
    ...(isBed ? [] : coats('feather', feather)),
    ...coats('reveals', reveals),
    ...(isBed ? fillingParts(task, index, product, face, feather) : []),
  ];
}

/** What filler takes beyond its thickness: the tapered margin, gaps between panels, hollows of the ground. */
function fillingParts(
  { layers, measures, wall, settings }: ZoneTask,
  index: number,
  product: Product,
  face: number,
  feather: number,
): Part[] {
  const isFirst = !layers.slice(0, index).some(({ layer }) => isFilling(layer.kind));
  const steel = layers.findIndex(({ layer }) => layer.kind === 'steel');
  const parts: Part[] = [];
  const add = (of: NeedFor, litres: number, how: string) => {
    if (litres > 0) parts.push({ of, coat: 0, need: volumeNeed(product, litres, how) });
  };
  const height = isFirst ? heightUpTo(layers, index) : (layers[index]!.thickness ?? 0);
  const margin = `${squareMetres(feather)} of tapered margin × half of ${figure(height, 2)} mm`;
  add('feather', (feather / 1e10) * (height / 2), margin);
  if (isFirst && steel >= 0 && index > steel) {
    const thickness = layers[steel]!.thickness ?? 0;
    const gaps = `${squareMetres(measures.gapArea, 4)} of joint gaps × ${figure(thickness, 2)} mm of steel`;
    add('gaps', (measures.gapArea / 1e10) * thickness, gaps);
  }
  const hollow = wall.ground?.hollow ?? 0;
  if (isFirst) {
    const share = settings.hollowShare;
    const words = `${squareMetres(face)} × ${figure(share, 2)} of the deepest hollow of ${figure(hollow, 1)} mm`;
    add('hollows', (face / 1e10) * hollow * share, words);
  }
  return parts;
}

/** mm from the ground, or what prepares it, to the face of a filler: what its margin has to run out. */
function heightUpTo(layers: ZoneTask['layers'], index: number): number {
  const from = layers.findIndex(({ layer }) => layer.kind === 'adhesive' || layer.kind === 'steel');
  return layers
    .slice(from < 0 || from > index ? index : from, index + 1)
    .filter(({ layer }) => (layer.over ?? 'face') === 'face')
    .reduce((sum, { thickness }) => sum + (thickness ?? 0), 0);
}

function isFilling(kind: LayerKind): boolean {
  return kind === 'filler' || kind === 'smoothing';
}

function jointParts({ measures, settings }: ZoneTask, layer: ResolvedLayer, product: Product): Part[] {
  const length = measures.jointLength / 1e5;
  if (length === 0) return [];
  if (product.unit === 'm') {
    const need = { net: length, how: `${figure(length, 2)} m of joints` };
    return eachCoat(layer, (coat) => ({ of: 'joints', coat, need }));
  }
  const width = product.rollWidth ?? settings.jointStrip;
  return eachCoat(layer, (coat) => ({
    of: 'joints',
    coat,
    need: alongStrip(layer, product, length, width, 'joints'),
  }));
}

function edgeParts({ measures, settings }: ZoneTask, layer: ResolvedLayer, product: Product): Part[] {
  const length = measures.cutEdges / 1e5;
  if (length === 0) return [];
  return eachCoat(layer, (coat) => ({
    of: 'edges',
    coat,
    need:
      product.unit === 'm'
        ? { net: length, how: `${figure(length, 2)} m of cut edges` }
        : alongStrip(layer, product, length, settings.edgeStrip, 'cut edges'),
  }));
}

function backParts({ measures }: ZoneTask, layer: ResolvedLayer, product: Product): Part[] {
  const area = measures.steelArea / 1e10;
  if (area === 0) return [];
  return eachCoat(layer, (coat) => ({ of: 'panels', coat, need: coatNeed(layer, product, area) }));
}

function alongStrip(
  layer: ResolvedLayer,
  product: Product,
  length: number,
  width: number,
  words: string,
): CoatNeed {
  const need = coatNeed(layer, product, length * (width / 1000));
  if ('missing' in need) return need;
  return {
    net: need.net,
    how: `${figure(length, 2)} m of ${words}, ${figure(width, 1)} mm wide: ${need.how}`,
  };
}

function eachCoat({ coats }: ResolvedLayer, part: (coat: number) => Part): Part[] {
  return Array.from({ length: coats }, (_, i) => part(i + 1));
}

function needOf(
  { wall, measures }: ZoneTask,
  { layer }: ResolvedLayer,
  index: number,
  product: Product,
  { of, coat, need }: Part,
): Need {
  const { net, how } = need as Extract<CoatNeed, { net: number }>;
  return {
    wall: wall.id,
    zone: measures.zone.id,
    delivery: wall.delivery ?? '',
    layer: index,
    kind: layer.kind,
    coat,
    of,
    item: itemOfProduct(product.id),
    unit: product.unit,
    net,
    withLoss: net,
    how,
  };
}

function lossAdded(need: Need, loss: number): Need {
  if (loss === 0) return { ...need, how: `${need.how}; no loss.` };
  return {
    ...need,
    withLoss: withLoss(need.net, loss),
    how: `${need.how}; ${figure(loss * 100, 1)} % lost, so ÷ ${figure(1 - loss, 3)}.`,
  };
}

/** The product of a layer; a finding where it has to have one. */
function productOf({ wall, measures }: ZoneTask, { layer, product }: ResolvedLayer, findings: Finding[]) {
  if (product || (layer.product === undefined && workAlone.includes(layer.kind))) return product;
  const place = `${nameOfZone(measures.zone)} on ${nameOfWall(wall)}`;
  const says =
    layer.product === undefined
      ? `The layer ${layerWords(layer.kind)} of ${place} has no product; choose one, or its material is not in the take-off.`
      : `The layer ${layerWords(layer.kind)} of ${place} asks for product ${layer.product}, which the job does not have; add it or choose another.`;
  findings.push({
    level: 'warning',
    code: 'layer-without-product',
    wall: wall.id,
    object: measures.zone.id,
    text: says,
  });
  return null;
}

const workAlone: readonly LayerKind[] = ['degreasing', 'keying', 'sanding', 'steel'];

function layerWords(kind: LayerKind): string {
  return `“${kind.replace('-', ' ')}”`;
}

/** The same words for every zone that the product is used in, so that it is said once. */
function missingFinding({ wall, measures }: ZoneTask, { name }: Product, missing: string): Finding {
  return {
    level: 'warning',
    code: 'product-without-rate',
    wall: wall.id,
    object: measures.zone.id,
    text: `How much ${name} is needed cannot be worked out, because the product does not say ${missing}; enter it from the data sheet.`,
  };
}

function squareMetres(area: number, places = 2): string {
  return `${figure(area / 1e10, places)} m²`;
}
