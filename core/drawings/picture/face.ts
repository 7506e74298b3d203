import { intersection } from '../../geometry/clip';
import { boxOfRegion, type Region } from '../../geometry/polygon';
import { toHundredth } from '../../units';
import type { Item } from '../page';
import type { Finish } from './finish';
import type { Pencil } from './pencil';
import { blend, luminanceOf } from './srgb';

/** A finished face: its colour, and how it takes the light, so that what one writes on is told from what one looks at. */
export function drawFace(area: Region, { colour, sheen }: Finish, pencil: Pencil): Item[] {
  if (area.length === 0) return [];
  const edge = blend(colour, luminanceOf(colour) > 0.25 ? '#1f2d36' : '#ffffff', 0.28);
  return [
    ...pencil.region(area, colour),
    ...(sheen === 'writable' ? gleams(area, [0.14, 0.2, 0.62, 0.74], 0.55, pencil) : []),
    ...(sheen === 'glass' ? gleams(area, [0.1, 0.12, 0.3, 0.33, 0.56, 0.58], 0.75, pencil) : []),
    ...(sheen === 'chalk' ? wipes(area, pencil) : []),
    ...pencil.rim(area, 3, edge, 0.7),
  ];
}

/** Slanting bands in which a glossy face gives back the light, from and to in shares of the face along its head. */
function gleams(area: Region, shares: readonly number[], opacity: number, { region }: Pencil): Item[] {
  const { left, right, bottom, top } = boxOfRegion(area);
  const [wide, high] = [right - left, top - bottom];
  const slant = high * 0.5;
  const pairs = Array.from({ length: shares.length / 2 }, (_, i) => [shares[2 * i]!, shares[2 * i + 1]!]);
  return pairs.flatMap(([from, to]) => {
    const at = (share: number) => Math.round(left + share! * (wide + slant));
    const lean = Math.round(slant);
    const band = {
      outer: [
        { x: at(from!) - lean, y: bottom },
        { x: at(to!) - lean, y: bottom },
        { x: at(to!), y: top },
        { x: at(from!), y: top },
      ],
      holes: [],
    };
    return region(intersection([band], area), '#ffffff', opacity);
  });
}

/** Broad traces of the cloth on slate: always the same ones, since a picture has no chance in it. */
function wipes(area: Region, { region }: Pencil): Item[] {
  const { left, right, bottom, top } = boxOfRegion(area);
  const [wide, high] = [right - left, top - bottom];
  const broad = Math.min(toHundredth(110), high * 0.14);
  return wipePlaces.flatMap(([from, to, up, rise]) => {
    const [x0, x1] = [Math.round(left + from * wide), Math.round(left + to * wide)];
    const y = bottom + up * high;
    const over = rise * high;
    const stroke = {
      outer: [
        { x: x0, y: Math.round(y) },
        { x: x1, y: Math.round(y + over) },
        { x: x1, y: Math.round(y + over + broad) },
        { x: x0, y: Math.round(y + broad) },
      ],
      holes: [],
    };
    return region(intersection([stroke], area), '#ffffff', 0.055);
  });
}

/** Shares of the face: from, to, height of the left end, rise to the right. */
const wipePlaces = [
  [0.05, 0.52, 0.7, 0.06],
  [0.4, 0.94, 0.62, 0.08],
  [0.08, 0.6, 0.38, -0.05],
  [0.34, 0.9, 0.2, 0.07],
] as const;
