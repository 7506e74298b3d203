import type { PxArea } from './zone-name';

/** What is to be written at an item. */
export interface WantedLabel {
  /** The item, px. */
  readonly box: PxArea;
  /** The same in fewer and fewer words. */
  readonly words: readonly string[];
  /** px that a label may be wide, beside that of its mark alone. */
  readonly widest: number;
  /** px between the item and what stands about it. */
  readonly away: number;
}

export interface PlacedLabel {
  /** Middle of the mark, px. */
  readonly x: number;
  readonly y: number;
  /** Right of the mark; empty where there is room for the mark alone. */
  readonly text: string;
  /** Smaller than elsewhere: the item itself is hardly larger. */
  readonly isSmall: boolean;
}

/** px: height of a label; its mark with the gap to the words. */
export const labelHeight = 17;
const markWidth = 15;
const gap = 4;
/** px between a label and another item beyond it. */
const margin = 6;

/**
 * Where the state of each item stands: at its left corner above it, else below or within it, so that no label covers another
 * item or label, nor seems to belong to another. Where that leaves no room for words, the mark alone lies in the item's corner.
 *
 * @param wanted those that matter most first: they are placed first
 * @param within what of the drawing shows, px
 * @param taken where nothing may be written, px
 * @param widthOf px of words as they are written
 */
export function placeLabels(
  wanted: readonly WantedLabel[],
  within: PxArea,
  taken: readonly PxArea[],
  widthOf: (words: string) => number,
): PlacedLabel[] {
  const room = new Room([...wanted.map(({ box }) => box), ...taken]);
  return wanted.map(({ box, words, widest, away }) => {
    for (const text of words) {
      const width = markWidth + gap + widthOf(text);
      if (width > widest) continue;
      const place = placesAbout(box, width, away).find(
        (area) => isWithin(area, within) && room.isFree(withMargin(area, box), box),
      );
      if (!place) continue;
      room.take(place);
      return { x: place.left + markWidth / 2, y: (place.top + place.bottom) / 2, text, isSmall: false };
    }
    return { ...inCorner(box), text: '' };
  });
}

function placesAbout({ left, top, right, bottom }: PxArea, width: number, away: number): PxArea[] {
  const at = (x: number, y: number) => ({ left: x, top: y, right: x + width, bottom: y + labelHeight });
  const fitsWithin = right - left >= width + 6 && bottom - top >= labelHeight + 6;
  return [
    at(left, top - away - labelHeight),
    at(left, bottom + away),
    ...(fitsWithin ? [at(left + 3, top + 3)] : []),
  ];
}

/** What is small has its mark over its corner, so that the thing itself is still seen. */
function inCorner({ left, top, right, bottom }: PxArea): Omit<PlacedLabel, 'text'> {
  const isSmall = Math.min(right - left, bottom - top) < 2 * markWidth;
  return { isSmall, x: left + (isSmall ? 2 : 10), y: top + (isSmall ? -2 : 10) };
}

/** With some paper beyond, so that it does not touch what lies there. */
function withMargin(area: PxArea, box: PxArea): PxArea {
  return area.bottom <= box.top
    ? { ...area, top: area.top - margin }
    : { ...area, bottom: area.bottom + (area.top >= box.bottom ? margin : 0) };
}

function isWithin(area: PxArea, within: PxArea): boolean {
  return (
    area.left >= within.left &&
    area.right <= within.right &&
    area.top >= within.top &&
    area.bottom <= within.bottom
  );
}

/** px of a side of the squares by which what is near is found: a wall may have hundreds of items. */
const cell = 64;

class Room {
  readonly #cells = new Map<string, PxArea[]>();

  constructor(taken: readonly PxArea[]) {
    for (const area of taken) this.take(area);
  }

  take(area: PxArea): void {
    for (const key of cellsOf(area)) {
      const there = this.#cells.get(key);
      if (there) there.push(area);
      else this.#cells.set(key, [area]);
    }
  }

  /** @param but the item itself, within which its own label may lie */
  isFree(area: PxArea, but: PxArea): boolean {
    return cellsOf(area).every((key) =>
      (this.#cells.get(key) ?? []).every((other) => other === but || !overlap(area, other)),
    );
  }
}

function cellsOf({ left, top, right, bottom }: PxArea): string[] {
  const keys: string[] = [];
  for (let x = Math.floor(left / cell); x <= Math.floor(right / cell); x++)
    for (let y = Math.floor(top / cell); y <= Math.floor(bottom / cell); y++) keys.push(`${x} ${y}`);
  return keys;
}

function overlap(a: PxArea, b: PxArea): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
