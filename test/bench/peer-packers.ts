import { FindPosition, MaxRectBinPack, Rect } from 'bin-packing-core';
import { MaxRectsPacker, PACKING_LOGIC } from 'maxrects-packer';
import { seededRandom } from '../../core/cutting/random';
import type { PackingInstance } from '../cutting/instance-file';
import type { Clock } from './solve-instance';

/*
 * Two general-purpose rectangle packers: bin-packing-core 0.1.7 (ISC licence), maxrects-packer 2.7.4 (MIT licence).
 * Each in the setting that does best here.
 */

export interface PackedRect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
/** Plates with what lies on each. */
export type PackedPlates = readonly (readonly PackedRect[])[];

/** One call a plate, by contact. */
export function packByContact({ items, width, height }: PackingInstance): PackedPlates {
  let left = items.flatMap(([w, h, quantity]) => Array.from({ length: quantity }, () => rectOf(w, h)));
  const plates: PackedRect[][] = [];
  while (left.length > 0) {
    const before = left.length;
    const plate = new MaxRectBinPack(width, height, true);
    const rest = left.map((rect) => rectOf(rect.width, rect.height));
    plates.push(plate.insertRects(rest, FindPosition.ContactPoint).map(plain));
    left = rest;
    if (left.length === before) throw new Error('The packer places nothing on an empty plate.');
  }
  return plates;
}

/** One call, largest area first. */
export function packByArea(instance: PackingInstance): PackedPlates {
  return packInOrder(
    instance,
    sortedBy(instance, PACKING_LOGIC.MAX_AREA, () => 1),
    PACKING_LOGIC.MAX_AREA,
  );
}

/**
 * The same again and again, the order disturbed by 10 to 60 %, by area and by longest edge in turn, until the
 * time is over or `enough` plates are reached; the best counts.
 */
export function packWithRestarts(
  instance: PackingInstance,
  enough: number,
  seconds: number,
  clock: Clock,
): PackedPlates {
  const start = clock();
  const random = seededRandom(1);
  let best = packByArea(instance);
  for (let round = 0; best.length > enough && clock() - start < seconds; round++) {
    const logic = round % 2 === 0 ? PACKING_LOGIC.MAX_AREA : PACKING_LOGIC.MAX_EDGE;
    const noise = 0.1 + 0.5 * random();
    const order = sortedBy(instance, logic, () => 1 + noise * (random() - 0.5) * 2);
    const plates = packInOrder(instance, order, logic);
    if (plates.length < best.length) best = plates;
  }
  return best;
}

type Sides = readonly [width: number, height: number];

function sortedBy({ items }: PackingInstance, logic: PACKING_LOGIC, factor: () => number): Sides[] {
  return items
    .flatMap(([w, h, quantity]) =>
      Array.from({ length: quantity }, () => {
        const size = logic === PACKING_LOGIC.MAX_AREA ? w * h : Math.max(w, h);
        return { sides: [w, h] as const, size: size * factor() };
      }),
    )
    .sort((a, b) => b.size - a.size)
    .map(({ sides }) => sides);
}

function packInOrder(
  { width, height }: PackingInstance,
  order: readonly Sides[],
  logic: PACKING_LOGIC,
): PackedPlates {
  const options = { smart: false, pot: false, square: false, allowRotation: true, border: 0, logic };
  const packer = new MaxRectsPacker(width, height, 0, options);
  for (const [w, h] of order) packer.add(w, h, null);
  return packer.bins.map((bin) => bin.rects.map(plain));
}

function plain({ x, y, width, height }: PackedRect): PackedRect {
  return { x, y, width, height };
}

function rectOf(width: number, height: number): Rect {
  const rect = new Rect();
  rect.width = width;
  rect.height = height;
  return rect;
}

/** What is wrong with a packing: every piece once, either way round, on a plate, none over another. */
export function packingFaults({ items, width, height }: PackingInstance, plates: PackedPlates): string[] {
  const key = (w: number, h: number) => `${Math.max(w, h)} × ${Math.min(w, h)}`;
  const left = new Map<string, number>();
  for (const [w, h, quantity] of items) left.set(key(w, h), (left.get(key(w, h)) ?? 0) + quantity);
  const faults: string[] = [];
  for (const plate of plates) {
    plate.forEach((a, i) => {
      left.set(key(a.width, a.height), (left.get(key(a.width, a.height)) ?? 0) - 1);
      if (a.x < 0 || a.y < 0 || a.x + a.width > width || a.y + a.height > height)
        faults.push('over the edge');
      for (const b of plate.slice(i + 1)) {
        const isApart =
          a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
        if (!isApart) faults.push('two pieces overlap');
      }
    });
  }
  if ([...left.values()].some((count) => count !== 0)) faults.push('a piece is missing or there twice');
  return faults;
}
