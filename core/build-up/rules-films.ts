import type { Layer, LayerKind } from '../job/product-schema';
import { absorbentGrounds } from './ground-layers';
import { filmLayers, workAlone } from './layer-kinds';
import {
  below,
  commonPractice,
  firstOf,
  has,
  insertBefore,
  nameOfLayer,
  type Rule,
  type RuleContext,
} from './rule';

/* Films, on walls and on glass. */

const wallFilms: readonly LayerKind[] = ['magnetic-film', 'writable-film'];
const paints: readonly LayerKind[] = [
  'decorative',
  'chalk',
  'writable',
  'clear-writable',
  'sealer',
  'primer',
];

export const filmRules: readonly Rule[] = [
  {
    code: 'film-not-sealed',
    level: 'warning',
    test: (context) => {
      const film = firstOf(context, ...wallFilms);
      if (film < 0) return false;
      const under = below(context, film);
      if (under)
        return ['filler', 'smoothing', 'bonding-coat', 'magnetic-coating'].includes(under.layer.kind);
      return absorbentGrounds.includes(context.ground.material ?? '');
    },
    text: () => 'the film lies on unsealed filler or bare ground',
    reason: 'Dust and suction take its adhesive, and every grain stands out.',
    source: commonPractice,
    mend: 'sand, clean and seal the ground first',
    apply: (layers) => insertBefore(layers, wallFilms, { kind: 'sealer', product: 'sealer', over: 'face' }),
  },
  {
    code: 'film-outgassing',
    level: 'note',
    test: (context) => has(context, ...wallFilms),
    text: (context) => {
      const under = below(context, firstOf(context, ...wallFilms));
      const cure = under?.product?.cure;
      const what = under ? nameOfLayer(under) : 'the ground';
      return `film goes on a level, clean ground that gives off nothing more, and ${what} ${cure === undefined ? 'must have cured' : `cures for ${cure} hours`}`;
    },
    reason: 'What a fresh coat still gives off collects in blisters under the film.',
    source: commonPractice,
    mend: 'wait for full cure and stick a test piece over night first',
  },
  {
    code: 'paint-on-film',
    level: 'warning',
    test: (context) => strongPaint(context) !== undefined,
    text: (context) => `${nameOfLayer(strongPaint(context)!)} over film does not dry by losing water`,
    reason: 'Solvents and hardeners attack film and its adhesive; film takes water-based paint only.',
    source: commonPractice,
    mend: 'take a water-based paint, or writable film to write on',
    apply: (layers) => {
      const film = layers.findIndex(({ kind }) => filmLayers.includes(kind));
      return layers.flatMap((layer, i): Layer[] => {
        if (i <= film) return [layer];
        if (layer.kind === 'writable' || layer.kind === 'clear-writable')
          return [{ kind: 'writable-film', product: 'writable-film', over: 'face' }];
        const { coats: _coats, thickness: _thickness, ...rest } = layer;
        if (layer.kind === 'decorative') return [{ ...rest, product: 'decorative-paint' }];
        if (layer.kind === 'chalk') return [{ ...rest, product: 'chalk-coat' }];
        if (layer.kind === 'sealer') return [{ ...rest, product: 'sealer' }];
        if (layer.kind === 'primer') return [{ ...rest, product: 'plaster-primer' }];
        return [layer];
      });
    },
  },
  {
    code: 'glass-film-ground',
    level: 'warning',
    test: (context) =>
      has(context, 'glass-film') &&
      context.ground.material !== undefined &&
      context.ground.material !== 'glass',
    text: ({ ground }) => `film for glass is planned on ${inWords(ground.material!)}`,
    reason: 'Its adhesive is made for glass: it holds badly on any other ground, or never comes off.',
    source: commonPractice,
    mend: 'take writable film for walls, or correct what the wall is made of',
  },
  {
    code: 'glass-film-primer',
    level: 'warning',
    test: (context) => {
      const film = firstOf(context, 'glass-film');
      return film >= 0 && below(context, film) !== null;
    },
    text: (context) =>
      `film lies on ${nameOfLayer(below(context, firstOf(context, 'glass-film'))!)} and not on the glass itself`,
    reason: 'Film for glass is laid wet on clean glass; on a primer or coat it clouds and comes off.',
    source: commonPractice,
    mend: 'lay it on clean glass without primer',
    apply: (layers) => {
      const film = layers.findIndex(({ kind, over }) => kind === 'glass-film' && over === 'face');
      return layers.filter(({ kind }, i) => i >= film || workAlone.includes(kind));
    },
  },
  {
    code: 'glass-film-pane',
    level: 'note',
    test: (context) => has(context, 'glass-film'),
    text: () => 'film holds warmth in the pane and can crack wired, insulated or sunlit glass',
    reason: 'A pane breaks where its middle grows and its edge in the frame stays cool.',
    source: commonPractice,
    mend: 'find out what pane it is and how the sun falls on it, and ask the glass maker before it is ordered',
  },
];

/** The first coat over a film that is known to dry otherwise than by losing water. */
function strongPaint(context: RuleContext) {
  const film = firstOf(context, ...filmLayers);
  if (film < 0) return undefined;
  return context.layers
    .slice(film + 1)
    .find(
      ({ layer, product }) =>
        paints.includes(layer.kind) && product !== null && product.drying !== 'water-loss',
    );
}

function inWords(material: string): string {
  return material.replaceAll('-', ' ');
}
