import { locate, type Point } from '../../geometry/polygon';
import type { HandChoice, HandPlace, HandPoint, Wall } from '../../job/schema';
import { placeOnWall } from '../../survey/wall-places';
import type { Hundredth } from '../../units';
import type { ZoneArea } from '../../zones/zone-area';
import type { SeamAxis } from '../seams';

/** Where no joint may lie: strictly between these; null where it goes on as far as the zone does. */
export interface Band {
  readonly left: Hundredth | null;
  readonly right: Hundredth | null;
  readonly bottom: Hundredth | null;
  readonly top: Hundredth | null;
}

/** What was chosen by hand, on the wall as it is now; wall frame, hundredths. */
export type HandWish = { readonly id: string } & (
  | { readonly kind: 'joint-on-line'; readonly axis: SeamAxis; readonly at: Point }
  | { readonly kind: 'no-joints'; readonly band: Band }
  | { readonly kind: 'whole-panel'; readonly at: Point }
  | { readonly kind: 'split'; readonly axis: SeamAxis; readonly at: Point }
  | { readonly kind: 'join'; readonly at: Point; readonly with: Point }
  | { readonly kind: 'no-panel'; readonly at: Point }
  | { readonly kind: 'other-stock'; readonly at: Point; readonly stock: string }
  /** Its place is not on the wall, or not in the zone, any more. */
  | { readonly kind: 'lost'; readonly of: string; readonly why: string }
  /** Of a kind that is not known here. */
  | { readonly kind: 'unknown'; readonly of: string }
);

export type WishOf<Kind extends HandWish['kind']> = Extract<HandWish, { kind: Kind }>;

/** The choices by hand of a zone, in their order; [] where there are none. */
export function handWishes(wall: Wall, area: ZoneArea): HandWish[] {
  return (area.zone.layout?.byHand ?? []).map((choice) => {
    const { id, kind } = choice;
    const lost: string[] = [];
    const along = (place: HandPlace, axis: SeamAxis): Hundredth => {
      const at = placeOnWall(wall, area.zone.id, place, axis);
      if (typeof at === 'number') return at;
      lost.push(at.lost);
      return 0;
    };
    const wish = wishOf(choice, along);
    const why = lost[0] ?? outOfZone(wish, area);
    return why ? { id, kind: 'lost', of: kind, why } : wish;
  });
}

function wishOf(choice: HandChoice, along: (place: HandPlace, axis: SeamAxis) => Hundredth): HandWish {
  const { id, kind } = choice;
  const point = ({ x, y }: HandPoint): Point => ({ x: along(x, 'x'), y: along(y, 'y') });
  const side = (place: HandPlace | undefined, axis: SeamAxis) =>
    place === undefined ? null : along(place, axis);
  const axis: SeamAxis = choice.direction === 'level' ? 'y' : 'x';
  switch (kind) {
    case 'joint-on-line':
    case 'split':
      return { id, kind, axis, at: point(choice.at!) };
    case 'whole-panel':
    case 'no-panel':
      return { id, kind, at: point(choice.at!) };
    case 'other-stock':
      return { id, kind, at: point(choice.at!), stock: choice.stock! };
    case 'join':
      return { id, kind, at: point(choice.at!), with: point(choice.with!) };
    case 'no-joints': {
      const { left, right, bottom, top } = choice;
      const band = {
        left: side(left, 'x'),
        right: side(right, 'x'),
        bottom: side(bottom, 'y'),
        top: side(top, 'y'),
      };
      return { id, kind, band };
    }
    default:
      return { id, kind: 'unknown', of: kind };
  }
}

/** Why a choice has nothing to do with the zone; null if it has. */
function outOfZone(wish: HandWish, { area, box, zone }: ZoneArea): string | null {
  switch (wish.kind) {
    case 'joint-on-line': {
      const { axis, at } = wish;
      const isAcross =
        axis === 'x' ? at.x > box.left && at.x < box.right : at.y > box.bottom && at.y < box.top;
      // With stagger, the height says in which course.
      const isAlong = axis === 'y' || !zone.layout?.stagger || (at.y >= box.bottom && at.y <= box.top);
      return isAcross && isAlong ? null : 'its line no longer passes through the zone';
    }
    case 'whole-panel':
    case 'no-panel':
    case 'other-stock':
      return area.some((part) => locate(wish.at, part) !== 'outside')
        ? null
        : 'no panel can lie there any more';
    case 'no-joints': {
      const { left, right, bottom, top } = wish.band;
      if ((left ?? -Infinity) >= (right ?? Infinity) || (bottom ?? -Infinity) >= (top ?? Infinity))
        return 'its edges have passed each other';
      const reaches =
        (left ?? -Infinity) < box.right &&
        (right ?? Infinity) > box.left &&
        (bottom ?? -Infinity) < box.top &&
        (top ?? Infinity) > box.bottom;
      return reaches ? null : 'it no longer reaches into the zone';
    }
    default:
      return null;
  }
}
