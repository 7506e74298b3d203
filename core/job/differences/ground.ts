import type { FixingPoint, Ground } from '../ground-schema';
import { fixingPointNames, nameOfFixingPoint, nameOfWall, sentence } from '../names';
import type { Wall } from '../schema';
import type { MmBox } from '../shape';
import {
  figure,
  isSame,
  isSameLength,
  sameLength,
  told,
  wayInWords,
  type Difference,
  type Says,
} from './difference';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists } from './match';
import { listDifferences, pointInWords } from './objects';
import { boxDifferences } from './place';

export const spelt = (value: unknown) => String(value).replaceAll('-', ' ');
const absent = 'not recorded';

const groundWords: FieldList = {
  material: { label: 'material', say: spelt, absent },
  age: { label: 'age of the coating', absent },
  state: { label: 'state of the coating', absent },
  hollow: { label: 'deepest hollow under 2 m', unit: 'mm', absent },
  suction: { label: 'suction', say: String, absent },
  suctionTest: { label: 'test of suction', absent },
  moisture: { label: 'moisture', say: moistureInWords, absent },
  adhesion: { label: 'adhesion', say: adhesionInWords, absent },
  exposure: { label: 'exposure', say: spelt, absent },
  escapeRoute: { label: 'on an escape route', absent },
  fire: { label: 'reaction to fire', say: String, absent },
};

const fixingPointWords: FieldList = {
  name: { label: 'name' },
  kind: { label: 'kind', say: (kind) => fixingPointNames[kind as FixingPoint['kind']] },
};

/** The state of the wall as it was found. */
export function groundDifferences(before: Wall, after: Wall): Difference[] {
  return fieldDifferences(before.ground ?? {}, after.ground ?? {}, groundWords).map(({ says }) => ({
    kind: 'changed',
    subject: 'wall',
    wall: after.id,
    text: told(`${sentence(nameOfWall(after))}, ground`, says),
    places: [],
  }));
}

/** Studs, pattresses and drillings that something may be screwed through. */
export function fixingPointDifferences(before: Wall, after: Wall): Difference[] {
  const matched = matchLists(before.fixingPoints ?? [], after.fixingPoints ?? [], (a, b) =>
    a.kind === b.kind && isSame(boxOf(a), boxOf(b), sameLength) ? 0 : undefined,
  );
  return listDifferences(
    matched,
    'fixing-point',
    after.id,
    nameOfFixingPoint,
    boxOf,
    sizeInWords,
    (was, is) => [
      ...placeDifferences(was, is),
      ...fieldDifferences(was, is, fixingPointWords, ['id', 'x', 'y', 'width', 'height']),
    ],
  );
}

function placeDifferences(was: FixingPoint, is: FixingPoint): Says[] {
  if (was.kind !== 'hole' || is.kind !== 'hole') return boxDifferences(boxOf(was), boxOf(is));
  const way = wayInWords(is.x - was.x, is.y - was.y);
  const size = `has a diameter of ${figure(is.width)} mm instead of ${figure(was.width)} mm`;
  return [
    ...(way ? [{ kind: 'moved', says: `moved ${way}` } as const] : []),
    ...(isSameLength(was.width, is.width) ? [] : [{ kind: 'changed', says: size } as const]),
  ];
}

function boxOf({ kind, x, y, width, height = width }: FixingPoint): MmBox {
  return kind === 'hole'
    ? { x: x - width / 2, y: y - width / 2, width, height: width }
    : { x, y, width, height };
}

function sizeInWords(point: FixingPoint): string {
  if (point.kind === 'hole')
    return `diameter ${figure(point.width)} mm at ${pointInWords([point.x, point.y])}`;
  const { x, y, width, height } = boxOf(point);
  return `${figure(width)} × ${figure(height)} mm at ${pointInWords([x, y])}`;
}

export function moistureInWords(of: unknown): string {
  const { value, unit, method } = of as NonNullable<Ground['moisture']>;
  return `${figure(value)} ${unit}${method ? ` (${method})` : ''}`;
}

export function adhesionInWords(of: unknown): string {
  const { test, result } = of as NonNullable<Ground['adhesion']>;
  return `${figure(result)}${test.startsWith('ISO 4624') || test.startsWith('EN') ? ' N/mm²' : ''} by ${test}`;
}
