import type { Tag } from './tags';

/** `#rrggbb` */
export type Hex = `#${string}`;

/** How a shape is painted, inherited from what it stands in; colours or none. */
export interface SvgPaint {
  readonly fill: Hex | null;
  readonly stroke: Hex | null;
  readonly strokeWidth: number;
  readonly evenOdd: boolean;
  readonly hidden: boolean;
}

/** SVG 1.1: filled black, not stroked. */
export const initialPaint: SvgPaint = {
  fill: '#000000',
  stroke: null,
  strokeWidth: 1,
  evenOdd: false,
  hidden: false,
};

/** Properties by which a picture looks otherwise than its plain lines and areas; what is not drawn here is named by them. */
const beyondNames: Readonly<Record<string, string>> = {
  'clip-path': 'clipping',
  mask: 'masks',
  filter: 'filters',
  'stroke-dasharray': 'dashed lines',
  'marker-start': 'line ends',
  'marker-mid': 'line ends',
  'marker-end': 'line ends',
};
const opacities = ['opacity', 'fill-opacity', 'stroke-opacity'];

/** @param beyond collects what the plain part of SVG does not have */
export function paintOf(tag: Tag, from: SvgPaint, beyond: Set<string>): SvgPaint {
  const own = propertiesOf(tag);
  for (const [property, name] of Object.entries(beyondNames)) {
    const value = own.get(property);
    if (value !== undefined && value !== 'none') beyond.add(name);
  }
  for (const property of opacities) {
    const value = own.get(property);
    if (value === undefined) continue;
    const share = value.endsWith('%') ? Number(value.slice(0, -1)) / 100 : Number(value);
    if (share !== 1) beyond.add('see-through parts');
  }
  const colour = (property: 'fill' | 'stroke'): Hex | null => {
    const value = own.get(property);
    if (value === undefined || value === 'inherit') return from[property];
    if (value === 'none' || value === 'transparent') return null;
    const hex = hexOf(value);
    if (!hex)
      beyond.add(value.startsWith('url') ? 'gradients or patterns' : `the colour “${value.slice(0, 20)}”`);
    return hex ?? from[property];
  };
  const width = parseFloat(own.get('stroke-width') ?? '');
  const rule = own.get('fill-rule');
  const visibility = own.get('visibility');
  return {
    fill: colour('fill'),
    stroke: colour('stroke'),
    strokeWidth: width >= 0 ? width : from.strokeWidth,
    evenOdd: rule === undefined ? from.evenOdd : rule === 'evenodd',
    hidden:
      from.hidden || own.get('display') === 'none' || visibility === 'hidden' || visibility === 'collapse',
  };
}

/** Attributes, and over them what stands in `style`. */
function propertiesOf({ attributes }: Tag): Map<string, string> {
  const own = new Map([...attributes].map(([key, value]) => [key, value.trim()]));
  for (const part of (attributes.get('style') ?? '').split(';')) {
    const colon = part.indexOf(':');
    if (colon > 0)
      own.set(
        part.slice(0, colon).trim(),
        part
          .slice(colon + 1)
          .replace(/!important/, '')
          .trim(),
      );
  }
  return own;
}

function hexOf(value: string): Hex | null {
  const text = value.toLowerCase();
  const short = /^#([\da-f])([\da-f])([\da-f])$/.exec(text);
  if (short)
    return `#${short
      .slice(1)
      .map((digit) => digit + digit)
      .join('')}`;
  if (/^#[\da-f]{6}$/.test(text)) return text as Hex;
  const parts = /^rgb\(\s*([\d.]+)(%?)[\s,]+([\d.]+)%?[\s,]+([\d.]+)%?\s*\)$/.exec(text);
  if (parts) {
    const scale = parts[2] ? 2.55 : 1;
    const byte = (part: string) =>
      Math.min(255, Math.round(Number(part) * scale))
        .toString(16)
        .padStart(2, '0');
    return `#${byte(parts[1]!)}${byte(parts[3]!)}${byte(parts[4]!)}`;
  }
  return named[text] ?? null;
}

/** The sixteen of HTML 4.01 and a few more of SVG 1.1, 4.4 that drawing programs write. */
const named: Readonly<Record<string, Hex>> = {
  black: '#000000',
  silver: '#c0c0c0',
  gray: '#808080',
  grey: '#808080',
  white: '#ffffff',
  maroon: '#800000',
  red: '#ff0000',
  purple: '#800080',
  fuchsia: '#ff00ff',
  green: '#008000',
  lime: '#00ff00',
  olive: '#808000',
  yellow: '#ffff00',
  navy: '#000080',
  blue: '#0000ff',
  teal: '#008080',
  aqua: '#00ffff',
  orange: '#ffa500',
  brown: '#a52a2a',
  pink: '#ffc0cb',
  gold: '#ffd700',
  darkgray: '#a9a9a9',
  lightgray: '#d3d3d3',
  currentcolor: '#000000',
};
