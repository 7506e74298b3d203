import type { Layer, LayerKind } from '../job/product-schema';
import { absorbentGrounds } from './ground-layers';
import { finishLevelOf } from '../job/finish-level';
import { finishLayers, layerNames } from './layer-kinds';
import {
  behindLast,
  below,
  commonPractice,
  firstOf,
  has,
  insertBefore,
  nameOfLayer,
  type Rule,
  type RuleContext,
} from './rule';

/* Coats: what they may lie on, and what whoever orders or uses them must know. */

const sealer: Layer = { kind: 'sealer', product: 'sealer', over: 'face' };
const writing: readonly LayerKind[] = ['writable', 'clear-writable'];
/** Deepest hollow under 2 m that a coat on the ground itself does not show, mm. */
const levelForCoats = 3;

export const coatRules: readonly Rule[] = [
  {
    code: 'coat-not-sealed',
    level: 'warning',
    test: (context) => isUnsealed(context, firstOf(context, ...writing, 'chalk')),
    text: (context) => `the ${nameOf(context, [...writing, 'chalk'])} lies on unsealed filler or bare ground`,
    reason: 'An unsealed ground drinks the coat in patches: it turns dull there and cannot be wiped clean.',
    source: commonPractice,
    mend: 'seal the sanded ground first',
    apply: (layers) => insertBefore(layers, [...writing, 'chalk'], sealer),
  },
  {
    code: 'coat-on-unlevel-ground',
    level: 'warning',
    test: (context) =>
      has(context, ...writing, 'chalk') && !has(context, 'filler') && isUnlevel(context, levelForCoats),
    text: ({ ground }) =>
      `hollows of ${ground.hollow} mm under 2 m are more than the ${levelForCoats} mm that a coat without a filler below it hides`,
    reason: 'Gloss shows every hollow in raking light, and a pen jumps over it.',
    source: commonPractice,
    mend: 'level the ground with filler before it is coated',
    apply: (layers) =>
      insertBefore(
        layers,
        ['magnetic-coating', 'magnetic-film', 'smoothing', 'sanding', 'sealer', ...finishLayers],
        { kind: 'filler', product: 'fine-filler', over: 'face' },
      ),
  },
  {
    code: 'finish-level',
    level: 'note',
    test: (context) =>
      has(context, ...writing, 'writable-film') && finishLevelOf(context.job, context.zone) === undefined,
    text: () =>
      'how level the finish is to be is a choice with a price, and raking light shows more than any other',
    reason: 'What nobody agreed on is judged afterwards in the worst light.',
    source: commonPractice,
    mend: 'state a level of finish for the zone or in the offer, and in which light it is accepted',
  },
  {
    code: 'clear-coat-test-patch',
    level: 'note',
    test: (context) => has(context, 'clear-writable'),
    text: () => 'a clear coat can lift, stain or craze the paint under it',
    reason: 'Binders and tints of paints differ, and none is known before it was tried.',
    source: commonPractice,
    mend: 'coat a test patch on the very paint and let it cure before the rest',
  },
  {
    code: 'clear-coat-ground',
    level: 'warning',
    test: (context) => {
      const clear = firstOf(context, 'clear-writable');
      if (clear < 0) return false;
      const under = below(context, clear);
      if (under) return under.layer.kind !== 'decorative';
      return context.ground.material !== undefined && context.ground.material !== 'sound-paint';
    },
    text: () => 'the clear coat does not lie on sound paint',
    reason: 'It is made for paint; on bare, filled or loose ground it darkens, lifts and stays patchy.',
    source: commonPractice,
    mend: 'paint the ground first and let it cure',
    apply: (layers) =>
      insertBefore(layers, ['clear-writable'], {
        kind: 'decorative',
        product: 'decorative-paint',
        over: 'face',
      }),
  },
  {
    code: 'too-few-coats',
    level: 'warning',
    test: (context) => tooFew(context) !== undefined,
    text: (context) => {
      const layer = tooFew(context)!;
      const coats = layer.coats === 1 ? '1 coat' : `${layer.coats} coats`;
      return `${nameOfLayer(layer)} is put on in ${coats}, fewer than the ${layer.product!.coats} of its data`;
    },
    reason: 'Each coat of a magnetic or writable product carries part of what it is bought for.',
    source: commonPractice,
    mend: 'give it all of its coats',
    apply: (layers) =>
      layers.map((layer) => {
        if (!countedCoats.includes(layer.kind)) return layer;
        const { coats: _coats, ...all } = layer;
        return all;
      }),
  },
  {
    code: 'stir-and-try-magnet',
    level: 'note',
    test: (context) => has(context, 'magnetic-coating'),
    text: () =>
      'the iron of a magnetic coating settles in the can, and what was put on too thin shows only under a magnet',
    reason: 'Once smoothed and sealed nothing can be added.',
    source: commonPractice,
    mend: 'stir to the bottom while it is used, and try the real magnet over the whole area before it is coated over',
  },
  {
    code: 'light-loads-only',
    level: 'note',
    test: (context) => has(context, 'magnetic-coating', 'magnetic-film') && !has(context, 'steel'),
    text: () => 'magnetic coating and film hold light and medium loads only',
    reason: 'They hold a small part of what steel does.',
    source: commonPractice,
    mend: 'take steel panels for heavy duty, and test with the real magnet before use',
  },
  {
    code: 'coating-not-smoothed',
    level: 'warning',
    test: (context) => {
      const coating = firstOf(context, 'magnetic-coating');
      const finish = firstOf(context, ...writing);
      return (
        coating >= 0 &&
        finish > coating &&
        !context.layers
          .slice(coating, finish)
          .some(({ layer: { kind } }) => kind === 'smoothing' || kind === 'filler')
      );
    },
    text: () => 'the writable finish follows the grain of the magnetic coating',
    reason: 'A magnetic coating dries rough: pens wear on it and it does not wipe clean.',
    source: commonPractice,
    mend: 'smooth and sand the coating, and seal it, before the finish',
    apply: (layers) => {
      const coating = layers.findIndex(({ kind, over }) => kind === 'magnetic-coating' && over === 'face');
      const finish = layers.findIndex(
        ({ kind, over }, i) => i > coating && writing.includes(kind) && over === 'face',
      );
      const at = behindLast(layers.slice(0, finish), 'magnetic-coating');
      const put: Layer[] = [
        { kind: 'smoothing', product: 'smoothing-filler', over: 'face' },
        { kind: 'sanding', over: 'face' },
      ];
      return layers.toSpliced(at, 0, ...put);
    },
  },
  {
    code: 'no-writing-before-cure',
    level: 'note',
    test: (context) => has(context, ...writing),
    text: (context) => {
      const { product } = context.layers.find(({ layer }) => writing.includes(layer.kind))!;
      const cure = product?.cure;
      return cure === undefined
        ? 'when the writable finish has cured is not known'
        : `the writable finish cures for ${inDays(cure)}`;
    },
    reason: 'Ink that is wiped off too early stays in the finish for good.',
    source: commonPractice,
    mend: 'let nobody write on it before full cure',
  },
];

const countedCoats: readonly LayerKind[] = ['magnetic-coating', 'writable', 'clear-writable'];

function tooFew({ layers }: RuleContext) {
  return layers.find(
    ({ layer, product, coats }) =>
      countedCoats.includes(layer.kind) && product !== null && coats < product.coats,
  );
}

function isUnsealed(context: RuleContext, index: number): boolean {
  if (index < 0) return false;
  const under = below(context, index);
  if (under) return under.layer.kind === 'filler' || under.layer.kind === 'smoothing';
  return absorbentGrounds.includes(context.ground.material ?? '');
}

function isUnlevel({ ground: { hollow } }: RuleContext, most: number): boolean {
  return hollow !== undefined && hollow > most;
}

function nameOf({ layers }: RuleContext, kinds: readonly LayerKind[]): string {
  return layerNames[layers.find(({ layer }) => kinds.includes(layer.kind))!.layer.kind];
}

/** Hours as days where they are whole: `6 days`. */
function inDays(hours: number): string {
  const days = hours / 24;
  if (!Number.isInteger(days)) return `${hours} hours`;
  return days === 1 ? '1 day' : `${days} days`;
}
