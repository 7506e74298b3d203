import { colours } from '../colours';
import { elementsOf, escapeXml, type AddressOf } from '../svg';
import { cutBands } from './cutaway';
import type { Item } from '../page';
import type { Scene } from './scene';

/*
 * A scene as SVG, for the screen and for a page to send. Its cutaway is made of clips, one a band, which whoever shows it
 * moves: `data-band` names them from the finished wall inwards, `data-edge` the lines between them.
 */

export interface SceneSvgOptions {
  /** Unlike that of any other picture on the same page. */
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly label: string;
  /** How far the cut has come when it is first seen; see `cutBands`. */
  readonly cut?: number;
  readonly addressOf?: AddressOf;
}

export function sceneSvg(
  { look, around, magnetLines, names, wallBox }: Scene,
  { id, width, height, label, cut = 0, addressOf = () => null }: SceneSvgOptions,
): string {
  const { left, right, bottom, top } = wallBox;
  const bands = cutBands(left, right, look.behind.length, cut);
  const drawn = (items: readonly Item[]) => elementsOf(items, height, addressOf).map(shorter);
  const frame = `y="${fine(height - top)}" height="${fine(top - bottom)}"`;
  const clips = bands.map(
    ({ from, to }, i) =>
      `<clipPath id="${id}-${i}"><rect data-band="${i}" x="${fine(from)}" width="${fine(to - from)}" ${frame}/></clipPath>`,
  );
  const clipped = (i: number, lines: readonly string[]) => [
    `<g clip-path="url(#${id}-${i})">`,
    ...lines,
    '</g>',
  ];
  const edges = bands
    .slice(1)
    .map(
      ({ from, to }, i) =>
        `<rect data-edge="${i}" x="${fine(from - 0.15)}" width="${to > from && from > left ? 0.3 : 0}" ${frame} fill="${colours.ink}"/>`,
    );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escapeXml(label)}" data-left="${fine(left)}" data-right="${fine(right)}">`,
    `<rect width="${width}" height="${height}" fill="${colours.white}"/>`,
    `<defs>${clips.join('')}<clipPath id="${id}-wall">${outlineOf(look.rim, height)}</clipPath></defs>`,
    ...clipped(0, drawn(look.faces)),
    ...look.behind.flatMap(({ items }, i) => clipped(i + 1, drawn(items))),
    `<g clip-path="url(#${id}-wall)">`,
    ...edges,
    '</g>',
    ...drawn(look.standing),
    ...clipped(0, [...drawn(look.hung), '<g data-names="">', ...drawn(magnetLines), '</g>']),
    ...drawn([look.rim, ...around]),
    '<g data-names="">',
    ...drawn(names),
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

function outlineOf({ points }: Scene['look']['rim'], height: number): string {
  const ring = points.map(({ x, y }) => `${fine(x)} ${fine(height - y)}`);
  return `<path d="M${ring.join('L')}Z"/>`;
}

/** Hundredths of a millimetre are finer than anyone zooms in; texts have no such attribute, since their quotes are escaped. */
function shorter(element: string): string {
  return element.replace(/ d="[^"]*"/g, (path) => path.replace(/(\.\d\d)\d+/g, '$1'));
}

function fine(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}
