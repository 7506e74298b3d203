/** A rectangle on the drawing, px. */
export interface PxArea {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Px {
  readonly x: number;
  readonly y: number;
}

/** A sign that wants a place: a disc with what it says beside it. */
export interface LooseSign {
  /** Where its disc belongs. */
  readonly spot: Px;
  /** Where else the disc may lie: on its line, or within its panel. */
  readonly within: PxArea;
  /** What it says, the fullest first, and how wide that is. */
  readonly words: readonly { readonly text: string; readonly width: number }[];
  /** It is under the hand, and stays there. */
  readonly isHeld: boolean;
}

/** Where a sign has come to lie. */
export interface PlacedSign {
  readonly disc: Px;
  /** The paper that its words stand on; null where there is no room for any. */
  readonly plate: (PxArea & { readonly text: string }) | null;
}

export const discRadius = 9;
const plateHeight = 18;
/** Paper beside the words, and from the disc to the plate. */
const inset = 3;
const apart = 2;
/** How far the disc goes in one step while it looks for a place. */
const step = 14;
const mostSpots = 220;

/**
 * Places for signs, so that none covers another, nor anything in `taken`, and all are whole on the drawing. Each keeps as
 * near to its spot as it can, first with all its words, then with fewer; where nothing is free it lies where it covers least.
 *
 * @returns in the order given; those in the hand are placed first
 */
export function placeSigns(
  signs: readonly LooseSign[],
  taken: readonly PxArea[],
  size: { readonly width: number; readonly height: number },
): PlacedSign[] {
  const full: PxArea = { left: 1, top: 1, right: size.width - 1, bottom: size.height - 1 };
  const filled = [...taken];
  const placed = new Map<LooseSign, PlacedSign>();
  for (const sign of [...signs].sort((a, b) => Number(b.isHeld) - Number(a.isHeld))) {
    const place = placeOf(sign, filled, full);
    placed.set(sign, place);
    filled.push(discArea(place.disc));
    if (place.plate) filled.push(place.plate);
  }
  return signs.map((sign) => placed.get(sign)!);
}

function placeOf(sign: LooseSign, filled: readonly PxArea[], full: PxArea): PlacedSign {
  if (isOff(sign.within, full)) return { disc: sign.spot, plate: null };
  const spots = sign.isHeld ? [sign.spot] : spotsOf(sign, full);
  let least = Infinity;
  let found: PlacedSign = { disc: spots[0]!, plate: null };
  for (const { text, width } of sign.words) {
    for (const disc of spots) {
      const ofDisc = coveredBy(discArea(disc), filled, full);
      // The plate can only add to it.
      if (ofDisc >= least) continue;
      for (const area of platesBeside(disc, width)) {
        const covered = ofDisc + coveredBy(area, filled, full);
        if (covered >= least) continue;
        least = covered;
        found = { disc, plate: { ...area, text } };
        if (covered === 0) return found;
      }
    }
  }
  return found;
}

/** All of it lies beyond the drawing's edge: it is seen once the drawing is moved. */
function isOff({ left, right, top, bottom }: PxArea, full: PxArea): boolean {
  return left > full.right || right < full.left || top > full.bottom || bottom < full.top;
}

/** The spot, then places about it that the sign may take, the nearest first. */
function spotsOf({ spot, within }: LooseSign, full: PxArea): Px[] {
  const across = (x: number) => clamp(x, full.left + discRadius, full.right - discRadius);
  const down = (y: number) => clamp(y, full.top + discRadius, full.bottom - discRadius);
  const area = {
    left: across(within.left),
    right: across(within.right),
    top: down(within.top),
    bottom: down(within.bottom),
  };
  const first = {
    x: clamp(spot.x, area.left, area.right),
    y: clamp(spot.y, area.top, area.bottom),
  };
  const xs = stepsFrom(first.x, area.left, area.right);
  const ys = stepsFrom(first.y, area.top, area.bottom);
  return xs
    .flatMap((x) => ys.map((y) => ({ x, y, far: Math.hypot(x - first.x, y - first.y) })))
    .sort((a, b) => a.far - b.far)
    .slice(0, mostSpots)
    .map(({ x, y }) => ({ x, y }));
}

function stepsFrom(at: number, low: number, high: number): number[] {
  const places = [at];
  for (let by = step; places.length < 2 * mostSpots && (at - by >= low || at + by <= high); by += step) {
    if (at - by >= low) places.push(at - by);
    if (at + by <= high) places.push(at + by);
  }
  return places;
}

/** Right of the disc, left of it, under and over it. */
function platesBeside({ x, y }: Px, width: number): PxArea[] {
  const wide = width + 2 * inset;
  const reach = discRadius + apart;
  const level = { top: y - plateHeight / 2, bottom: y + plateHeight / 2 };
  const middle = { left: x - wide / 2, right: x + wide / 2 };
  return [
    { left: x + reach, right: x + reach + wide, ...level },
    { left: x - reach - wide, right: x - reach, ...level },
    { ...middle, top: y + reach, bottom: y + reach + plateHeight },
    { ...middle, top: y - reach - plateHeight, bottom: y - reach },
  ];
}

export function discArea({ x, y }: Px): PxArea {
  return { left: x - discRadius, right: x + discRadius, top: y - discRadius, bottom: y + discRadius };
}

/** px² of an area that lie on others or off the drawing; what is off counts most, as it cannot be read at all. */
function coveredBy(area: PxArea, filled: readonly PxArea[], full: PxArea): number {
  const own = sizeOf(area);
  let sum = 10 * (own - shared(area, full));
  for (const other of filled) sum += shared(area, other);
  return sum;
}

function shared(a: PxArea, b: PxArea): number {
  return (
    Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
    Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top))
  );
}

function sizeOf({ left, right, top, bottom }: PxArea): number {
  return (right - left) * (bottom - top);
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
