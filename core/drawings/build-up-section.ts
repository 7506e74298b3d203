import { layerNames, workAlone } from '../build-up/layer-kinds';
import type { ResolvedBuildUp, ResolvedLayer } from '../build-up/resolve';
import type { Mm } from '../units';
import { hatch } from './hatch';
import type { Item, PaperPoint, Text, TextMeasure } from './page';
import { cornersOf, type PaperBox } from './paper';
import { fitText } from './text';

export interface BuildUpSection {
  readonly items: readonly Item[];
  /** Of the whole block, mm. */
  readonly height: Mm;
  /** Enlargement of the layers: `20 : 1`, ISO 5455; null where there are none to draw. */
  readonly scale: string | null;
}

/** Enlargements, ISO 5455:1979 (from memory) with its multiples of ten, the largest first. */
const enlargements: readonly number[] = [100, 50, 20, 10, 5, 2, 1];
/** mm on paper. */
const wallWidth: Mm = 10;
const mostLayersWidth: Mm = 60;
/** A thinner layer could not be told from a line. */
const leastWidth: Mm = 1.2;
const rowHeight: Mm = 5.5;
const toLabels: Mm = 6;
const notToScale = '*';

/**
 * A level section through the wall: the ground on the left, the room on the right, every layer that stays on the wall with
 * its name and thickness on a leader. What is thinner on paper than 1.2 mm, or of unknown thickness, is drawn that wide and
 * starred. Work that leaves nothing, and layers on cut edges or backs of panels alone, are not drawn.
 *
 * @param at left and top of the block and its width, at least 120 mm
 */
export function drawBuildUpSection(
  { layers }: ResolvedBuildUp,
  at: { readonly left: Mm; readonly top: Mm; readonly width: Mm },
  measure: TextMeasure,
): BuildUpSection {
  const drawn = layers.filter(
    ({ layer }) => layer.over !== 'edges' && layer.over !== 'backs' && !workAlone.includes(layer.kind),
  );
  if (drawn.length === 0) return { items: [], height: 0, scale: null };
  const enlargement = enlargements.find((one) => totalWidth(drawn, one) <= mostLayersWidth) ?? 1;
  // Many layers at the least width may still be too wide together.
  const squeeze = Math.min(1, mostLayersWidth / totalWidth(drawn, enlargement));
  const bandTop = at.top;
  const bandBottom = at.top - rowHeight * (drawn.length + 0.5);
  const box = (left: Mm, right: Mm): PaperBox => ({ left, right, bottom: bandBottom, top: bandTop });
  const items: Item[] = [...ground(box(at.left, at.left + wallWidth))];
  const labelsAt = at.left + wallWidth + totalWidth(drawn, enlargement) * squeeze + toLabels;
  let x = at.left + wallWidth;
  let isStarred = false;
  drawn.forEach((layer, i) => {
    const width = widthOf(layer, enlargement) * squeeze;
    const isTrue = squeeze === 1 && isToScale(layer, enlargement);
    isStarred ||= !isTrue;
    const right = x + width;
    items.push(...band(layer, box(x, right)));
    // The first label stands lowest, so that no leader crosses the dot of another.
    const y = bandBottom + rowHeight * (i + 0.75);
    items.push(...leader({ x: (x + right) / 2, y }, labelsAt - 1));
    items.push(label(layer, isTrue, { x: labelsAt, y: y - 1.25 }, at.left + at.width - labelsAt, measure));
    x = right;
  });
  const scale = `${enlargement} : 1`;
  const foot = `Section ${scale}${isStarred ? `; ${notToScale} not to scale` : ''}`;
  const footAt = { x: at.left, y: bandBottom - 4.5 };
  items.push(fitText({ kind: 'text', text: foot, at: footAt, height: 2.5 }, at.width, measure));
  return { items, height: at.top - footAt.y + 1, scale };
}

function widthOf({ thickness }: ResolvedLayer, enlargement: number): Mm {
  return Math.max(leastWidth, (thickness ?? 0) * enlargement);
}

function isToScale({ thickness }: ResolvedLayer, enlargement: number): boolean {
  return thickness !== null && thickness * enlargement >= leastWidth - 1e-9;
}

function totalWidth(layers: readonly ResolvedLayer[], enlargement: number): Mm {
  return layers.reduce((sum, layer) => sum + widthOf(layer, enlargement), 0);
}

/** Hatched, its outer edge open. */
function ground(box: PaperBox): Item[] {
  return [
    ...hatch([cornersOf(box)], { spacing: 1.6, angle: 45, width: 0.18, colour: 'soft' }),
    upright(box.right, box, 0.5),
  ];
}

/** Steel is full, filler and adhesive lightly hatched the other way, coats and films empty. */
function band({ layer: { kind, over } }: ResolvedLayer, box: PaperBox): Item[] {
  const fill: Item[] =
    kind === 'steel'
      ? [{ kind: 'fill', rings: [cornersOf(box)], colour: 'ink' }]
      : ['adhesive', 'filler', 'smoothing', 'bonding-coat'].includes(kind)
        ? hatch([cornersOf(box)], { spacing: 1.2, angle: 135, width: 0.18, colour: 'soft' })
        : [];
  const edge = upright(box.right, box, 0.25);
  return [...fill, over === 'joints' ? { ...edge, line: 'dashed' } : edge];
}

function upright(x: Mm, { bottom, top }: PaperBox, width: 0.25 | 0.5) {
  const points = [
    { x, y: bottom },
    { x, y: top },
  ];
  return { kind: 'stroke' as const, points, width };
}

/** White under the line keeps it legible across steel. */
function leader(from: PaperPoint, to: Mm): Item[] {
  const points = [from, { x: to, y: from.y }];
  return [
    { kind: 'stroke', points, width: 0.7, colour: 'white' },
    { kind: 'stroke', points, width: 0.18 },
    { kind: 'circle', centre: from, radius: 0.5, fill: 'ink', colour: 'white', width: 0.18 },
  ];
}

function label(
  resolved: ResolvedLayer,
  isTrue: boolean,
  at: PaperPoint,
  width: Mm,
  measure: TextMeasure,
): Text {
  const { layer, product, coats, thickness } = resolved;
  const name = product?.name ?? layerNames[layer.kind];
  const where = layer.over === 'joints' ? ' over joints' : '';
  const times = coats > 1 ? `${coats} coats, ` : '';
  const thick = thickness === null ? 'thickness not known' : thicknessText(thickness);
  const star = isTrue ? '' : ` ${notToScale}`;
  const full: Text = {
    kind: 'text',
    text: `${capital(name)}${where}, ${times}${thick}${star}`,
    at,
    height: 2.5,
  };
  // The thickness says more than the end of a long name.
  const short: Text = { ...full, text: `${capital(layerNames[layer.kind])}${where}, ${thick}${star}` };
  const fits = measure(full.text, 2.5, { face: 'condensed' }) <= width;
  return fitText(fits ? full : short, width, measure);
}

/** As data sheets have it, in every unit of a job: `0,5 mm`, below a tenth `40 µm`. */
export function thicknessText(thickness: Mm): string {
  if (thickness < 0.1) return `${Math.round(thickness * 1000)} µm`;
  return `${String(Math.round(thickness * 100) / 100).replace('.', ',')} mm`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
