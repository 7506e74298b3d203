import { apply, growthOf, identity, parseTransform, product, type Matrix, type SvgPoint } from './matrix';
import { initialPaint, paintOf, type Hex, type SvgPaint } from './paint';
import { parsePath, type Chain } from './path-data';
import { readTags, type Tag } from './tags';

/** Chains painted alike, in the picture's own units, x to the right and y down from its upper left corner. */
export interface SvgShape {
  readonly chains: readonly Chain[];
  readonly fill: Hex | null;
  readonly stroke: Hex | null;
  readonly strokeWidth: number;
  readonly evenOdd: boolean;
}

/** A picture of lines. Its height is 1 in these units where its width is `width / height`. */
export interface SvgPicture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly SvgShape[];
}

/** Points of all chains; a street plan has a tenth of this. */
const mostPoints = 400_000;

/**
 * The plain part of an SVG file: paths and basic shapes with transforms and flat colours, in the frame of its `viewBox`.
 * Nothing in it is run, fetched or looked up, and nothing of it reaches the page: what comes out are points and colours.
 *
 * @returns `fault`: why there is no such picture, as the rest of a sentence; `beyond` names what the file has besides,
 *   without which it would look otherwise
 * Source: SVG 1.1 (second edition), chapters 7 to 9 and 11.
 */
export function readSvg(
  bytes: Uint8Array,
): SvgPicture | { readonly fault: string; readonly beyond?: readonly string[] } {
  const tags = readTags(new TextDecoder().decode(bytes));
  if ('fault' in tags) return { fault: tags.fault };
  const root = tags.find(({ opens }) => opens);
  if (root?.name !== 'svg') return { fault: 'is no SVG' };
  const frame = frameOf(root);
  if (!frame) return { fault: 'says neither its view box nor its size' };
  const beyond = new Set<string>();
  const shapes = shapesOf(tags, frame.toFrame, beyond);
  if ('fault' in shapes) return shapes;
  if (beyond.size > 0) {
    const listed = [...beyond];
    return { fault: `has ${listed.join(', ')}, which is not drawn as lines`, beyond: listed };
  }
  return shapes.length === 0
    ? { fault: 'shows nothing' }
    : { width: frame.width, height: frame.height, shapes };
}

interface Level {
  readonly name: string;
  readonly matrix: Matrix;
  readonly paint: SvgPaint;
  /** What is in it is defined and not shown. */
  readonly aside: boolean;
}

/** Elements that hold things for use elsewhere, or words about the picture. */
const aside = new Set([
  'defs',
  'metadata',
  'title',
  'desc',
  'script',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
]);
const beyondElements: Readonly<Record<string, string>> = {
  text: 'text',
  image: 'pictures in it',
  use: 'parts used again',
  foreignObject: 'parts of another format',
  animate: 'animation',
  animateTransform: 'animation',
  set: 'animation',
  switch: 'parts by language',
};

function shapesOf(
  tags: readonly Tag[],
  toFrame: Matrix,
  beyond: Set<string>,
): SvgShape[] | { readonly fault: string } {
  const shapes: SvgShape[] = [];
  const levels: Level[] = [{ name: '', matrix: toFrame, paint: initialPaint, aside: false }];
  let points = 0;
  for (const tag of tags) {
    const level = levels.at(-1)!;
    if (!tag.opens) {
      if (levels.length > 1 && level.name === tag.name) levels.pop();
      else return { fault: 'has elements that do not close' };
      continue;
    }
    const own = tag.attributes.get('transform');
    const transform = own === undefined ? identity : parseTransform(own);
    if (!transform) return { fault: 'has a transform that cannot be read' };
    const isAside = level.aside || tag.prefix !== '' || aside.has(tag.name);
    if (tag.name === 'style' && tag.hasText) beyond.add('a style sheet');
    if (!isAside && tag.name === 'svg' && levels.length > 1) beyond.add('a picture within the picture');
    const next: Level = {
      name: tag.name,
      matrix: product(level.matrix, transform),
      paint: isAside ? level.paint : paintOf(tag, level.paint, beyond),
      aside: isAside,
    };
    if (!isAside && !next.paint.hidden) {
      if (Object.hasOwn(beyondElements, tag.name)) beyond.add(beyondElements[tag.name]!);
      const chains = chainsOf(tag);
      if (!chains) return { fault: `has a ${tag.name} that cannot be read` };
      points += chains.reduce((sum, chain) => sum + chain.points.length, 0);
      if (points > mostPoints) return { fault: `has more than ${mostPoints} points` };
      const shape = shapeOf(chains, next);
      if (shape) shapes.push(shape);
    }
    if (!tag.closes) levels.push(next);
    if (levels.length > 100) return { fault: 'is nested too deep' };
  }
  return levels.length === 1 ? shapes : { fault: 'is cut short' };
}

function shapeOf(chains: readonly Chain[], { matrix, paint }: Level): SvgShape | null {
  const { fill, stroke, strokeWidth, evenOdd } = paint;
  const line = strokeWidth > 0 ? stroke : null;
  if (chains.length === 0 || (!fill && !line)) return null;
  const placed = chains.map(({ points, closed }) => ({
    closed,
    points: points.map((point) => apply(matrix, point)),
  }));
  const isSound = placed.every(({ points }) =>
    points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)),
  );
  return isSound
    ? { chains: placed, fill, stroke: line, strokeWidth: strokeWidth * growthOf(matrix), evenOdd }
    : null;
}

/** null where a shape cannot be read; [] for what is no shape. */
function chainsOf({ name, attributes }: Tag): readonly Chain[] | null {
  const figure = (key: string) => parseFloat(attributes.get(key) ?? '0') || 0;
  switch (name) {
    case 'path':
      return parsePath(attributes.get('d') ?? '');
    case 'rect':
      return rectangleOf(figure('x'), figure('y'), figure('width'), figure('height'), attributes);
    case 'circle':
      return ellipseOf(figure('cx'), figure('cy'), figure('r'), figure('r'));
    case 'ellipse':
      return ellipseOf(figure('cx'), figure('cy'), figure('rx'), figure('ry'));
    case 'line':
      return [
        {
          closed: false,
          points: [
            { x: figure('x1'), y: figure('y1') },
            { x: figure('x2'), y: figure('y2') },
          ],
        },
      ];
    case 'polyline':
    case 'polygon':
      return chainThrough(attributes.get('points') ?? '', name === 'polygon');
    default:
      return [];
  }
}

function rectangleOf(
  x: number,
  y: number,
  width: number,
  height: number,
  attributes: ReadonlyMap<string, string>,
): readonly Chain[] | null {
  if (width <= 0 || height <= 0) return [];
  const [given, other] = [attributes.get('rx'), attributes.get('ry')];
  const rx = Math.min(parseFloat(given ?? other ?? '0') || 0, width / 2);
  const ry = Math.min(parseFloat(other ?? given ?? '0') || 0, height / 2);
  if (rx <= 0 || ry <= 0) return parsePath(`M${x} ${y}h${width}v${height}h${-width}z`);
  const turn = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
  return parsePath(
    `M${x + rx} ${y}h${width - 2 * rx}${turn(rx, ry)}v${height - 2 * ry}${turn(-rx, ry)}` +
      `h${2 * rx - width}${turn(-rx, -ry)}v${2 * ry - height}${turn(rx, -ry)}z`,
  );
}

function ellipseOf(cx: number, cy: number, rx: number, ry: number): readonly Chain[] | null {
  if (rx <= 0 || ry <= 0) return [];
  return parsePath(`M${cx - rx} ${cy}a${rx} ${ry} 0 0 1 ${2 * rx} 0a${rx} ${ry} 0 0 1 ${-2 * rx} 0z`);
}

function chainThrough(text: string, closed: boolean): readonly Chain[] | null {
  const figures =
    text.trim() === ''
      ? []
      : text
          .trim()
          .split(/[\s,]+/)
          .map(Number);
  if (figures.length % 2 !== 0 || !figures.every(Number.isFinite)) return null;
  const points: SvgPoint[] = [];
  for (let i = 0; i < figures.length; i += 2) points.push({ x: figures[i]!, y: figures[i + 1]! });
  return points.length < 2 ? [] : [{ points, closed }];
}

/** What is shown is the view box, or else the size; its upper left corner becomes the origin. */
function frameOf({ attributes }: Tag): { width: number; height: number; toFrame: Matrix } | null {
  const box = (attributes.get('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x = 0, y = 0, width = 0, height = 0] = box;
  if (box.length === 4 && box.every(Number.isFinite) && width > 0 && height > 0)
    return { width, height, toFrame: [1, 0, 0, 1, -x, -y] };
  const size = (key: string) => {
    const text = attributes.get(key) ?? '';
    return text.endsWith('%') ? NaN : parseFloat(text);
  };
  const [wide, high] = [size('width'), size('height')];
  return wide > 0 && high > 0 ? { width: wide, height: high, toFrame: identity } : null;
}
