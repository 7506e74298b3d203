import { intersection, union } from '../../geometry/clip';
import type { Region } from '../../geometry/polygon';
import { coatLayers, layerNames, workAlone } from '../../build-up/layer-kinds';
import type { ResolvedBuildUp, ResolvedLayer } from '../../build-up/resolve';
import type { LayerKind } from '../../job/product-schema';
import type { Panel } from '../../panels/panel';
import { toHundredth, type Mm } from '../../units';
import type { WorkedZone } from '../../worked-out';
import type { Item, PictureColour } from '../page';
import type { Pencil, RealBox } from './pencil';

/*
 * What is behind a finished wall: its layers are taken away from the face inwards, and what is left is drawn from the
 * bare wall outwards, so that every step shows the layers that this zone really has.
 */

/** How far the layers are taken away. */
export const depthsBehind = ['filler', 'primer', 'steel', 'ground'] as const;
export type DepthBehind = (typeof depthsBehind)[number];

const finishes: readonly LayerKind[] = [
  'writable',
  'clear-writable',
  'chalk',
  'decorative',
  'writable-film',
  'glass-film',
];
const levelling: readonly LayerKind[] = ['bonding-coat', 'filler', 'sealer', 'smoothing'];
const overSteel: readonly LayerKind[] = ['reinforcement', 'metal-primer'];
const magnetic: readonly LayerKind[] = ['steel', 'magnetic-coating', 'magnetic-film'];

/** Layers that are still there, from the bare wall outwards; work that leaves nothing is not among them. */
export function layersBehind({ layers }: ResolvedBuildUp, depth: DepthBehind): readonly ResolvedLayer[] {
  const left = layers.filter(({ layer }) => !workAlone.includes(layer.kind));
  const gone = [finishes, levelling, overSteel, magnetic].slice(0, depthsBehind.indexOf(depth) + 1);
  return gone.reduce(withoutTop, left);
}

function withoutTop(layers: readonly ResolvedLayer[], kinds: readonly LayerKind[]): readonly ResolvedLayer[] {
  const last = layers.findLastIndex(({ layer }) => !kinds.includes(layer.kind));
  return layers.slice(0, last + 1);
}

/** `anti-corrosion primer`, the outermost layer that is left; `the bare wall` where none is. */
export function topInWords(layers: readonly ResolvedLayer[]): string {
  const top = layers.findLast(({ layer }) => layer.over !== 'edges' && layer.over !== 'backs')?.layer;
  return top ? layerNames[top.kind] : 'the bare wall';
}

const colours: Readonly<Partial<Record<LayerKind, PictureColour>>> = {
  primer: '#e3e0d2',
  adhesive: '#d8c9a6',
  'bonding-coat': '#d9d3c3',
  filler: '#eae6dc',
  sealer: '#f1eee7',
  smoothing: '#e8e4da',
  'magnetic-coating': '#55595b',
  'magnetic-film': '#4a4e50',
  decorative: '#efeae0',
};

/** The layers of a zone that are left, over one another. */
export function drawLayers(
  { area: { area }, layout }: WorkedZone,
  layers: readonly ResolvedLayer[],
  pencil: Pencil,
): Item[] {
  const panels = layout?.panels ?? [];
  return layers.flatMap(({ layer }): Item[] => {
    if (layer.over === 'edges' || layer.over === 'backs') return [];
    switch (layer.kind) {
      case 'steel':
        return drawPanels(panels, pencil);
      case 'metal-primer':
        return pencil.region(
          panels.map(({ outline }) => outline),
          '#a3665a',
          0.55,
        );
      case 'reinforcement':
        return tapes(panels, area, pencil);
      case 'adhesive':
        return [...pencil.region(area, colours.adhesive!), ...ridges(area, pencil)];
      default: {
        const colour = colours[layer.kind] ?? (coatLayers.includes(layer.kind) ? '#e8e4da' : '#ececea');
        return pencil.region(area, colour);
      }
    }
  });
}

/** Every panel as it was laid out, cut to its real outline. */
function drawPanels(panels: readonly Panel[], pencil: Pencil): Item[] {
  const steel = panels.map(({ outline }) => outline);
  return [
    ...steel.flatMap((outline) => pencil.region([outline], '#bcc4c8')),
    ...pencil.rim(steel, 3, '#5d6870'),
  ];
}

const tapeWidth: Mm = 50;
/** Hundredths: two panels farther apart share no joint. */
const widestJoint = toHundredth(8);

/** A strip over every edge that two panels share. */
function tapes(panels: readonly Panel[], area: Region, pencil: Pencil): Item[] {
  const strips = union(...sharedEdges(panels).map((box) => [rectangleOf(box)]));
  return pencil.region(intersection(strips, area), '#f3f0e6', 0.75);
}

/** Upright and level edges of panels that lie no farther apart than a joint, as strips of tape; mm. */
export function sharedEdges(panels: readonly Panel[]): RealBox[] {
  const edges = panels.flatMap(({ outline: { outer } }, panel) =>
    outer.flatMap((from, i) => {
      const to = outer[(i + 1) % outer.length]!;
      const isUpright = from.x === to.x;
      if (!isUpright && from.y !== to.y) return [];
      const [at, ends] = isUpright ? [from.x, [from.y, to.y]] : [from.y, [from.x, to.x]];
      return [{ panel, isUpright, at, low: Math.min(...ends), high: Math.max(...ends) }];
    }),
  );
  // In order of their place, so that only neighbours are held against each other.
  edges.sort((a, b) => a.at - b.at);
  return edges.flatMap((a, i) => {
    const strips: RealBox[] = [];
    for (let k = i + 1; k < edges.length && edges[k]!.at - a.at <= widestJoint; k++) {
      const b = edges[k]!;
      const [low, high] = [Math.max(a.low, b.low) / 100, Math.min(a.high, b.high) / 100];
      if (a.panel === b.panel || a.isUpright !== b.isUpright || high - low < 1) continue;
      const middle = (a.at + b.at) / 200;
      const [from, to] = [middle - tapeWidth / 2, middle + tapeWidth / 2];
      strips.push(
        a.isUpright
          ? { left: from, right: to, bottom: low, top: high }
          : { left: low, right: high, bottom: from, top: to },
      );
    }
    return strips;
  });
}

/** Traces of the notched trowel, on their slant; far fewer than there are. */
function ridges(area: Region, pencil: Pencil): Item[] {
  const pitch = toHundredth(60);
  return area.flatMap(({ outer }) => {
    const xs = outer.map(({ x }) => x);
    const ys = outer.map(({ y }) => y);
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
    const lean = Math.round((top - bottom) * 0.35);
    const count = Math.ceil((right - left + lean) / pitch);
    const strips = Array.from({ length: count }, (_, i) => {
      const x = left - lean + i * pitch;
      const wide = toHundredth(14);
      return {
        outer: [
          { x, y: bottom },
          { x: x + wide, y: bottom },
          { x: x + wide + lean, y: top },
          { x: x + lean, y: top },
        ],
        holes: [],
      };
    });
    return pencil.region(intersection(strips, area), '#b8a578', 0.5);
  });
}

function rectangleOf({ left, right, bottom, top }: RealBox) {
  const [x0, y0, x1, y1] = [left, bottom, right, top].map(toHundredth) as [number, number, number, number];
  return {
    outer: [
      { x: x0, y: y0 },
      { x: x1, y: y0 },
      { x: x1, y: y1 },
      { x: x0, y: y1 },
    ],
    holes: [],
  };
}
