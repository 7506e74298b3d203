import { difference, offsetMitred } from '../../geometry/clip';
import { translate, type Region } from '../../geometry/polygon';
import type { SurveyedWall } from '../../survey/surveyed-wall';
import { toHundredth } from '../../units';
import type { Item } from '../page';
import { srgbOf, usualColours } from './finish';
import { regionOf } from './openings';
import type { Pencil } from './pencil';
import { castShadow } from './shadows';

/** The skirting that the job gives the wall: along the floor, up every step, stopping at doors and their casings. */
export function drawSkirting({ wall, outline, keepOuts }: SurveyedWall, pencil: Pencil): Item[] {
  const { skirting } = wall;
  if (!skirting) return [];
  const room = regionOf(outline.ring);
  const openings = keepOuts
    .filter(({ kind }) => kind === 'opening')
    .map(({ id, bare }): Region => {
      const clearance = wall.openings.find((opening) => opening.id === id)?.clearance ?? 0;
      return offsetMitred(regionOf(bare.ring), toHundredth(Math.min(clearance, 80)));
    });
  const board = skirtingArea(room, skirting.height, openings);
  return [
    ...pencil.region(castShadow(board, skirting.depth, difference(room, ...openings)), '#1f2d36', 0.18),
    ...pencil.region(board, srgbOf(skirting.colour) ?? usualColours.skirting),
    ...pencil.rim(board, 3, '#8d8778'),
  ];
}

/** All of a wall that lies less than `height` mm above its foot, less the openings. */
export function skirtingArea(wall: Region, height: number, openings: readonly Region[]): Region {
  const above = wall.map((one) => translate(one, 0, toHundredth(height)));
  return difference(wall, above, ...openings);
}
