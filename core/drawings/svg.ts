import { colours } from './colours';
import { lineRuns } from './line-types';
import type { Art, Circle, Fill, Item, Lettering, Page, PaperPoint, Photograph, Stroke, Text } from './page';
import { missingPhotograph } from './missing-photograph';
import { pageSize } from './paper';
import type { Mm } from '../units';

/** Size of the look's fonts over the height of their capitals; the PDF takes the exact figure of each face. */
const sizePerCapital = 1000 / 689;

/**
 * A page as SVG, for the screen and for drawings under review. Units are millimetres; texts stay texts and
 * expect the fonts "Fira Sans" and "Fira Sans Condensed". No styles, scripts or links: safe to put inline.
 */
export function toSvg(page: Page, addressOf: AddressOf = () => null): string {
  const { width, height } = pageSize(page);
  return itemsToSvg(page.items, width, height, addressOf);
}

/** Where a photograph can be had by whoever shows the page; null: it is not at hand, and its place is crossed out. */
export type AddressOf = (photo: string) => string | null;

/** Likewise of a picture that stands on no page. */
export function itemsToSvg(
  items: readonly Item[],
  width: Mm,
  height: Mm,
  addressOf: AddressOf = () => null,
): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<rect width="${width}" height="${height}" fill="${colours.white}"/>`,
    ...elementsOf(items, height, addressOf),
    '</svg>',
    '',
  ].join('\n');
}

/** Each item as an element, to be put into a picture of that height. */
export function elementsOf(items: readonly Item[], height: Mm, addressOf: AddressOf = () => null): string[] {
  const flip = ({ x, y }: PaperPoint): PaperPoint => ({ x, y: height - y });
  return items.map((item) => elementOf(item, flip, addressOf)).filter(Boolean);
}

type Flip = (point: PaperPoint) => PaperPoint;

function elementOf(item: Item, flip: Flip, addressOf: AddressOf): string {
  switch (item.kind) {
    case 'stroke':
      return strokeElement(item, flip);
    case 'fill':
      return fillElement(item, flip);
    case 'circle':
      return circleElement(item, flip);
    case 'text':
    case 'lettering':
      return textElement(item, flip);
    case 'art':
      return artElement(item, flip);
    case 'photograph':
      return photographElement(item, flip, addressOf(item.photo));
  }
}

function artElement({ chains, fill, evenOdd, stroke, width, opacity = 1 }: Art, flip: Flip): string {
  const data = chains.map(({ points, closed }) => pathData(points, closed, flip)).join('');
  const rule = evenOdd ? ' fill-rule="evenodd"' : '';
  const line = stroke ? ` stroke="${escapeXml(stroke)}" stroke-width="${number(width)}"` : '';
  const through = opacity < 1 ? ` opacity="${number(opacity)}"` : '';
  return `<path d="${data}" fill="${escapeXml(fill ?? 'none')}"${rule}${line}${through}/>`;
}

function photographElement(item: Photograph, flip: Flip, address: string | null): string {
  const { left, bottom, width, height } = item;
  const { x, y } = flip({ x: left, y: bottom + height });
  const place = `x="${number(x)}" y="${number(y)}" width="${number(width)}" height="${number(height)}"`;
  return address === null
    ? missingPhotograph(item)
        .map((stroke) => strokeElement(stroke, flip))
        .join('')
    : `<image ${place} preserveAspectRatio="none" href="${escapeXml(address)}"/>`;
}

function strokeElement({ points, closed, width, line, colour }: Stroke, flip: Flip): string {
  if (points.length < 2) return '';
  const runs = lineRuns(line ?? 'continuous', width).map(number);
  const dashes = runs.length > 0 ? ` stroke-dasharray="${runs.join(' ')}"` : '';
  const stroke = `fill="none" stroke="${colours[colour ?? 'ink']}" stroke-width="${width}"${dashes}`;
  return `<path d="${pathData(points, closed ?? false, flip)}" ${stroke}/>`;
}

function fillElement({ rings, colour }: Fill, flip: Flip): string {
  const data = rings.filter((ring) => ring.length > 2).map((ring) => pathData(ring, true, flip));
  if (data.length === 0) return '';
  return `<path d="${data.join('')}" fill="${colours[colour]}" fill-rule="evenodd"/>`;
}

function circleElement({ centre, radius, width, colour, fill }: Circle, flip: Flip): string {
  const { x, y } = flip(centre);
  const stroke = width === undefined ? '' : ` stroke="${colours[colour ?? 'ink']}" stroke-width="${width}"`;
  const inside = fill ? colours[fill] : 'none';
  return `<circle cx="${number(x)}" cy="${number(y)}" r="${number(radius)}" fill="${inside}"${stroke}/>`;
}

function textElement(text: Text | Lettering, flip: Flip): string {
  if (text.text.trim() === '') return '';
  const { x, y } = flip(text.at);
  const family = text.face === 'condensed' ? 'Fira Sans Condensed' : 'Fira Sans';
  const place =
    text.kind === 'text' && text.turned === 90
      ? `transform="translate(${number(x)} ${number(y)}) rotate(-90)"`
      : `x="${number(x)}" y="${number(y)}"`;
  const attributes = [
    place,
    `font-family="${family}, sans-serif"`,
    `font-size="${number(text.height * sizePerCapital)}"`,
    ...(text.weight === 'semi-bold' ? ['font-weight="600"'] : []),
    ...(text.anchor && text.anchor !== 'start' ? [`text-anchor="${text.anchor}"`] : []),
    `fill="${colours[text.colour ?? 'ink']}"`,
  ];
  return `<text ${attributes.join(' ')}>${escapeXml(text.text.normalize('NFC'))}</text>`;
}

function pathData(points: readonly PaperPoint[], closed: boolean, flip: Flip): string {
  const steps = points.map((point, i) => {
    const { x, y } = flip(point);
    return `${i === 0 ? 'M' : 'L'}${number(x)} ${number(y)}`;
  });
  return steps.join('') + (closed ? 'Z' : '');
}

/** Micrometres: enough for paper, and the same text on every machine. */
function number(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}

/** Characters of markup, and controls that XML 1.0 forbids. */
export function escapeXml(text: string): string {
  const entities: Record<string, string> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&#39;',
  };
  return (
    text
      // eslint-disable-next-line no-control-regex
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replace(/[&<>"']/g, (character) => entities[character]!)
  );
}
