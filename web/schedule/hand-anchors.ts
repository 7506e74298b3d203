import type { HandPlace, Wall } from '../../core/job/schema';
import { anchorLines } from '../elevation/by-hand/anchor-lines';

/** The value of a choice that measures from the wall's datum. */
export const datum = 'datum';

export interface AnchorChoice {
  readonly value: string;
  readonly label: string;
  /** On the edge itself. */
  readonly place: HandPlace;
}

/** What a place along an axis can be measured from; an edge that is gone stays in the list for as long as it is chosen. */
export function anchorChoices(
  wall: Wall,
  zoneId: string,
  axis: 'x' | 'y',
  place: HandPlace,
): readonly AnchorChoice[] {
  const edges = anchorLines(wall, zoneId)
    .filter((line) => line.axis === axis)
    .map((line): AnchorChoice => ({
      value: edgeKey(line.place as Exclude<HandPlace, number>),
      label: line.words,
      place: line.place,
    }));
  const own = typeof place === 'number' ? datum : edgeKey(place);
  const known = [{ value: datum, label: 'the datum', place: 0 }, ...edges];
  if (typeof place === 'number' || known.some(({ value }) => value === own)) return known;
  const { of, id, side } = place;
  const words = [side, of, id].filter(Boolean).join(' ');
  return [
    ...known,
    { value: own, label: `${words} (gone)`, place: { of, ...(id && { id }), ...(side && { side }) } },
  ];
}

export function edgeKey({ of, id, side }: Exclude<HandPlace, number>): string {
  return JSON.stringify([of, id ?? '', side ?? '']);
}
