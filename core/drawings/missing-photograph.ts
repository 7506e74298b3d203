import type { Photograph, Stroke } from './page';
import { cornersOf } from './paper';

/** The place of a picture that is not at hand: framed and crossed out, to scale all the same. */
export function missingPhotograph({ left, bottom, width, height }: Photograph): Stroke[] {
  const corners = cornersOf({ left, bottom, right: left + width, top: bottom + height });
  const [a, b, c, d] = corners as [Corner, Corner, Corner, Corner];
  return [
    { kind: 'stroke', points: corners, closed: true, width: 0.25 },
    { kind: 'stroke', points: [a, c], width: 0.18, colour: 'soft' },
    { kind: 'stroke', points: [b, d], width: 0.18, colour: 'soft' },
  ];
}

type Corner = Stroke['points'][number];
