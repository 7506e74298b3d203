import type { Layer } from '../job/product-schema';
import { denseGrounds } from './ground-layers';
import { coatLayers, finishLayers } from './layer-kinds';
import { behindLast, commonPractice, firstOf, has, insertBefore, overSteel, type Rule } from './rule';

/* Steel panels: how they are bonded, kept from rust and levelled. */

const twoComponent: Layer = { kind: 'adhesive', product: 'adhesive-two-component', over: 'face' };
const edgePrimer: Layer = { kind: 'metal-primer', product: 'metal-primer', over: 'edges' };
const facePrimer: Layer = { kind: 'metal-primer', product: 'metal-primer', over: 'face' };

/** In place of every adhesive; under the first steel where it has none. */
function bonded(layers: readonly Layer[]): readonly Layer[] {
  const bed = layers.map((layer) => (layer.kind === 'adhesive' ? twoComponent : layer));
  const steel = bed.findIndex(({ kind, over }) => kind === 'steel' && over === 'face');
  const isUnder = bed.slice(0, Math.max(steel, 0)).some(({ kind }) => kind === 'adhesive');
  return steel < 0 || isUnder ? bed : insertBefore(bed, ['steel'], twoComponent);
}

export const steelRules: readonly Rule[] = [
  {
    code: 'steel-without-adhesive',
    level: 'warning',
    test: (context) => {
      const steel = firstOf(context, 'steel');
      return steel >= 0 && !context.layers.slice(0, steel).some(({ layer: { kind } }) => kind === 'adhesive');
    },
    text: () => 'steel panels have no adhesive under them',
    reason: 'Panels bonded over their whole back neither drum nor bulge, and share their load with the wall.',
    source: commonPractice,
    mend: 'put in an adhesive that is laid as a full bed',
    apply: bonded,
  },
  {
    code: 'adhesive-shut-in',
    level: 'warning',
    test: (context) =>
      denseGrounds.includes(context.ground.material ?? '') &&
      has(context, 'steel') &&
      context.layers.some(
        ({ layer, product }) => layer.kind === 'adhesive' && product?.drying === 'water-loss',
      ),
    text: () =>
      'the adhesive dries by losing water, and between steel and a dense ground the water cannot leave',
    reason: 'Shut in, a water-borne adhesive stays soft for weeks and panels slide or come off.',
    source: commonPractice,
    mend: 'take an adhesive that sets by reaction',
    apply: bonded,
  },
  {
    code: 'adhesive-not-full-bed',
    level: 'warning',
    test: (context) =>
      has(context, 'steel') &&
      context.layers.some(
        ({ layer, product }) =>
          layer.kind === 'adhesive' && product?.tool !== undefined && product.tool.kind !== 'notched-trowel',
      ),
    text: () => 'the adhesive under the steel is not laid as a full bed by notched trowel',
    reason: 'Between beads thin steel springs, drums and shows through filler and finish.',
    source: commonPractice,
    mend: 'take an adhesive that is combed on by notched trowel',
    apply: bonded,
  },
  {
    code: 'bare-cut-edges',
    level: 'warning',
    test: (context) =>
      isWet(overSteel(context)) &&
      !overSteel(context).some(({ layer }) => layer.kind === 'metal-primer' && layer.over === 'edges'),
    text: () => 'the cut edges of the steel stay bare under water-borne filler or paint',
    reason: 'A cut edge has no coating, whatever the sheet was bought with: it rusts and the rust bleeds.',
    source: commonPractice,
    mend: 'prime every cut edge against rust',
    apply: (layers) => layers.toSpliced(behindLast(layers, 'steel'), 0, edgePrimer),
  },
  {
    code: 'bare-steel-face',
    level: 'warning',
    test: (context) =>
      isWet(overSteel(context)) &&
      !overSteel(context).some(({ layer }) => layer.kind === 'metal-primer' && layer.over === 'face'),
    text: () => 'the face of the steel stays bare under water-borne filler or paint',
    reason: 'Water of filler and paint rusts steel, and a galvanised face too wants a primer that grips.',
    source: commonPractice,
    mend: 'prime the face against rust',
    apply: (layers) => layers.toSpliced(behindLast(layers, 'steel'), 0, facePrimer),
  },
  {
    code: 'joints-not-reinforced',
    level: 'warning',
    test: (context) =>
      overSteel(context).some(
        ({ layer: { kind } }) => coatLayers.includes(kind) || finishLayers.includes(kind),
      ) && !overSteel(context).some(({ layer }) => layer.kind === 'reinforcement'),
    text: () => 'joints between panels have no reinforcement',
    reason: 'Steel and wall move with warmth; filler without tape or fleece cracks along the joints.',
    source: commonPractice,
    mend: 'lay joint tape or a whole-area fleece over them',
    apply: (layers) =>
      insertBefore(
        layers,
        ['bonding-coat', 'filler', 'sanding', 'sealer', 'smoothing', ...finishLayers],
        { kind: 'reinforcement', product: 'joint-tape', over: 'joints' },
        behindLast(layers, 'steel'),
      ),
  },
  {
    code: 'filler-without-bonding-coat',
    level: 'warning',
    test: (context) => {
      const kinds = overSteel(context).map(({ layer }) => layer.kind);
      const filler = kinds.findIndex((kind) => kind === 'filler' || kind === 'smoothing');
      return filler >= 0 && !kinds.slice(0, filler).includes('bonding-coat');
    },
    text: () => 'filler lies on steel without a bonding coat',
    reason: 'Filler grips neither steel nor a smooth primer for long.',
    source: commonPractice,
    mend: 'put a bonding coat under the first filler',
    apply: (layers) => {
      const from = behindLast(layers, 'steel');
      const filler = layers.findIndex(
        ({ kind }, i) => i >= from && (kind === 'filler' || kind === 'smoothing'),
      );
      return layers.toSpliced(filler, 0, { kind: 'bonding-coat', product: 'bonding-coat', over: 'face' });
    },
  },
  {
    code: 'finish-without-filler',
    level: 'warning',
    test: (context) => {
      const kinds = overSteel(context).map(({ layer }) => layer.kind);
      const finish = kinds.findIndex((kind) => finishLayers.includes(kind));
      return finish >= 0 && !kinds.slice(0, finish).includes('filler');
    },
    text: () => 'the finish lies on the steel panels without filler, so every joint and edge will show',
    reason:
      'Joints, screws and the step at the zone’s edge vanish only under filler, run out in a feather and sanded level.',
    source: commonPractice,
    mend: 'level the panels and feather them out with filler before the finish',
    apply: (layers) => {
      const from = behindLast(layers, 'steel');
      const finish = layers.findIndex(
        ({ kind }, i) => i >= from && (kind === 'sealer' || finishLayers.includes(kind)),
      );
      const put: Layer[] = [
        { kind: 'filler', product: 'fine-filler', over: 'face' },
        { kind: 'sanding', over: 'face' },
      ];
      return layers.toSpliced(finish, 0, ...put);
    },
  },
  {
    code: 'steel-on-glass',
    level: 'warning',
    test: (context) => has(context, 'steel') && context.ground.material === 'glass',
    text: () => 'steel panels are bonded onto glass',
    reason: 'Steel warms otherwise than glass, hides what the pane is doing and can break it.',
    source: commonPractice,
    mend: 'choose another wall, or film on the glass',
  },
];

/** Whether water of filler or paint comes onto the steel. */
function isWet(layers: ReturnType<typeof overSteel>): boolean {
  return layers.some(
    ({ layer, product }) => layer.kind !== 'metal-primer' && product?.drying === 'water-loss',
  );
}
