import { placeAt, figureOf } from './by-hand';
import type { HandChoice, HandPlace, HandPoint } from './schema';

/** A place of a choice by hand: the axis along which it counts, and which field it stands in. */
export interface PlaceOfChoice {
  readonly axis: 'x' | 'y';
  readonly place: HandPlace;
  /** The choice with another place there. */
  with(to: HandPlace): Partial<HandChoice>;
}

/** All places of a choice, those of its points and its sides. */
export function placesOfChoice(choice: HandChoice): PlaceOfChoice[] {
  const point = (field: 'at' | 'with'): PlaceOfChoice[] => {
    const own = choice[field];
    if (!own) return [];
    return (['x', 'y'] as const).map((axis) => ({
      axis,
      place: own[axis],
      with: (to) => ({ [field]: { ...own, [axis]: to } as HandPoint }),
    }));
  };
  const sides = (['left', 'right', 'bottom', 'top'] as const).flatMap((side): PlaceOfChoice[] => {
    const place = choice[side];
    const axis = side === 'left' || side === 'right' ? 'x' : 'y';
    return place === undefined ? [] : [{ axis, place, with: (to) => ({ [side]: to }) }];
  });
  return [...point('at'), ...point('with'), ...sides];
}

/**
 * A choice moved as one. Places that stay with an edge stay with it, further from it or nearer.
 *
 * @param dx, dy mm
 */
export function movedChoice(choice: HandChoice, dx: number, dy: number): HandChoice {
  const by = { x: dx, y: dy };
  return mapPlaces(choice, ({ axis, place }) =>
    by[axis] === 0 ? place : placeAt(place, tidy(figureOf(place) + by[axis])),
  );
}

/** A choice with every place replaced. */
export function mapPlaces(choice: HandChoice, to: (place: PlaceOfChoice) => HandPlace): HandChoice {
  let changed = choice;
  for (let i = 0; i < placesOfChoice(choice).length; i++) {
    const place = placesOfChoice(changed)[i]!;
    changed = { ...changed, ...place.with(to(place)) };
  }
  return changed;
}

/** Whole hundredths of a millimetre. */
function tidy(length: number): number {
  return Math.round(length * 100) / 100;
}
