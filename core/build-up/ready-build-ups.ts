import type { BuildUp, Layer, LayerKind } from '../job/product-schema';

/** One for each build-up that a zone can name. What the ground asks for beforehand stands in `ground-layers.ts`. */
export const readyBuildUps: readonly BuildUp[] = [
  steel('steel-panel', ['decorative', 'decorative-paint']),
  steel('steel-panel-writable', ['writable', 'writable-finish']),
  steel(
    'steel-panel-clear-writable',
    ['decorative', 'decorative-paint'],
    ['clear-writable', 'clear-writable-finish'],
  ),
  steel('steel-panel-chalk', ['chalk', 'chalk-coat']),
  steel('steel-panel-writable-film', ['writable-film', 'writable-film']),
  magneticCoating('magnetic-coating', ['decorative', 'decorative-paint']),
  magneticCoating('magnetic-coating-writable', ['writable', 'writable-finish']),
  magneticCoating('magnetic-coating-chalk', ['chalk', 'chalk-coat']),
  levelled('magnetic-film', ['magnetic-film', 'magnetic-film'], ['decorative', 'decorative-paint']),
  levelled('magnetic-film-writable', ['magnetic-film', 'magnetic-film'], ['writable-film', 'writable-film']),
  levelled('magnetic-film-chalk', ['magnetic-film', 'magnetic-film'], ['chalk', 'chalk-coat']),
  levelled('writable', ['writable', 'writable-finish']),
  build('clear-writable', ['decorative', 'decorative-paint'], ['clear-writable', 'clear-writable-finish']),
  levelled('chalk', ['chalk', 'chalk-coat']),
  levelled('writable-film', ['writable-film', 'writable-film']),
  build('glass-film', ['degreasing', 'degreaser'], ['glass-film', 'glass-film']),
];

type Put = readonly [kind: LayerKind, product?: string | undefined, over?: Layer['over']];

function build(kind: string, ...layers: readonly Put[]): BuildUp {
  return {
    id: kind,
    name: '',
    kind,
    layers: layers.map(([layer, product, over = 'face']) => ({
      kind: layer,
      ...(product === undefined ? {} : { product }),
      over,
    })),
  };
}

function steel(kind: string, ...finish: readonly Put[]): BuildUp {
  return build(
    kind,
    ['degreasing', 'degreaser', 'backs'],
    ['keying', undefined, 'backs'],
    ['adhesive', 'adhesive-two-component'],
    ['steel'],
    ['metal-primer', 'metal-primer'],
    ['metal-primer', 'metal-primer', 'edges'],
    ['reinforcement', 'joint-tape', 'joints'],
    ['bonding-coat', 'bonding-coat'],
    ['filler', 'fine-filler'],
    ['sanding'],
    ['sealer', 'sealer'],
    ...finish,
  );
}

function magneticCoating(kind: string, ...finish: readonly Put[]): BuildUp {
  return build(
    kind,
    ['magnetic-coating', 'magnetic-coating'],
    ['smoothing', 'smoothing-filler'],
    ['sanding'],
    ['sealer', 'sealer'],
    ...finish,
  );
}

/** Straight on the ground, smoothed and sealed first. */
function levelled(kind: string, ...finish: readonly Put[]): BuildUp {
  return build(kind, ['smoothing', 'smoothing-filler'], ['sanding'], ['sealer', 'sealer'], ...finish);
}
