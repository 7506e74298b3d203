import { buildUpKind } from '../build-up-kinds';
import { kindInWords, nameOfPlaced, nameOfZone, sentence } from '../names';
import type { Fitting, Opening, SurveyLine, Wall, Zone } from '../schema';
import { boxOfObject, type MmBox } from '../shape';
import {
  figure,
  isSame,
  sameLength,
  told,
  wayInWords,
  type Difference,
  type DifferenceSubject,
  type Says,
} from './difference';
import { edgeEndsInWords } from './build-ups';
import { fieldDifferences, type FieldList } from './fields';
import { colourWords, lockWords, runInWords } from './field-words';
import { matchLists, type Matched } from './match';
import { placeDifferences } from './place';

type Placed = Opening | Fitting;

const placeFields = ['id', 'x', 'y', 'width', 'height', 'circle', 'shape'];

const placedWords: FieldList = {
  kind: { label: 'kind', say: (kind) => (kind === 'free' ? 'free' : kindInWords(String(kind), 'fitting')) },
  name: { label: 'name' },
  clearance: { label: 'clearance', unit: 'mm' },
  hinge: { label: 'hinge side', say: String },
  swing: { label: 'swing', say: (swing) => (swing === 'towards' ? 'towards the room' : String(swing)) },
  handle: { label: 'handle height', unit: 'mm' },
  locked: lockWords,
  stop: { label: 'door stop', say: (stop) => (stop ? 'there is one' : 'none') },
};

const zoneWords: FieldList = {
  name: { label: 'name' },
  buildUp: { label: 'build-up', say: (id) => buildUpKind(String(id)).label.toLowerCase() },
  layers: { label: 'layers', say: (id) => `build-up ${String(id)}`, absent: 'the ready ones' },
  edges: { label: 'ends of edges', say: edgeEndsInWords, absent: 'as usual' },
  finishLevel: { label: 'level of finish', absent: "the offer's" },
  colour: colourWords,
  runsOn: { label: 'run round the corner', whole: runInWords },
  locked: lockWords,
};

const lineWords: FieldList = {
  kind: { label: 'kind', say: (kind) => String(kind).replaceAll('-', ' ') },
  width: { label: 'width', unit: 'mm' },
};

export function matchZones(before: Wall, after: Wall): Matched<Zone> {
  return matchLists(before.zones, after.zones, nearness);
}

export function openingDifferences(before: Wall, after: Wall): Difference[] {
  return placedDifferences(before.openings, after.openings, 'opening', after.id);
}

export function fittingDifferences(before: Wall, after: Wall): Difference[] {
  return placedDifferences(before.fittings, after.fittings, 'fitting', after.id);
}

/** Zones but for their layouts. */
export function zoneDifferences(before: Wall, after: Wall): Difference[] {
  const matched = matchZones(before, after);
  const order = ([...matched.pairs] as const).map(([was]) => before.zones.indexOf(was));
  const isReordered = order.some((place, i) => i > 0 && place < order[i - 1]!);
  const reordered: Difference = {
    kind: 'changed',
    subject: 'wall',
    wall: after.id,
    text: `The zones are listed in another order: ${after.zones.map(({ id }) => id).join(', ')}.`,
    places: [],
  };
  return [
    ...listDifferences(matched, 'zone', after.id, nameOfZone, boxOfObject, sizeInWords, (was, is) => [
      ...placeDifferences(was, is),
      ...fieldDifferences(was, is, zoneWords, ['id', 'shape', 'holes', 'layout', 'markings', 'pullTests']),
    ]),
    ...(isReordered ? [reordered] : []),
  ];
}

export function lineDifferences(before: Wall, after: Wall): Difference[] {
  const matched = matchLists(before.lines ?? [], after.lines ?? [], (a, b) =>
    a.kind === b.kind && isSame([a.from, a.to], [b.from, b.to], sameLength) ? 0 : undefined,
  );
  const name = ({ kind, id }: SurveyLine) => `${kind.replaceAll('-', ' ')} ${id}`;
  const size = ({ from, to }: SurveyLine) => `from ${pointInWords(from)} to ${pointInWords(to)}`;
  return listDifferences(matched, 'line', after.id, name, boxOfLine, size, (was, is) => [
    ...lineShift(was, is),
    ...fieldDifferences(was, is, lineWords, ['id', 'from', 'to']),
  ]);
}

function placedDifferences(
  before: readonly Placed[],
  after: readonly Placed[],
  list: 'opening' | 'fitting',
  wallId: string,
): Difference[] {
  const matched = matchLists(before, after, (a, b) => (a.kind === b.kind ? nearness(a, b) : undefined));
  const name = (object: Placed) => nameOfPlaced(object, list);
  return listDifferences(matched, list, wallId, name, boxOfObject, sizeInWords, (was, is) => [
    ...placeDifferences(was, is),
    ...fieldDifferences(was, is, placedWords, placeFields),
  ]);
}

/** Things of a list that were matched: what has changed in each, then what came and what went. */
export function listDifferences<T extends { readonly id: string }>(
  { pairs, removed, added }: Matched<T>,
  subject: DifferenceSubject,
  wall: string,
  name: (object: T) => string,
  boxOf: (object: T) => MmBox,
  size: (object: T) => string,
  compare: (before: T, after: T) => Says[],
): Difference[] {
  const say = (object: T, kind: Difference['kind'], says: string, places: readonly MmBox[]): Difference => ({
    kind,
    subject,
    wall,
    object: object.id,
    text: told(sentence(name(object)), says),
    places,
  });
  return [
    ...pairs.flatMap(([was, is]) => {
      const renumbered: Says[] =
        was.id === is.id ? [] : [{ kind: 'changed', says: `was listed as ${was.id} before` }];
      return [...renumbered, ...compare(was, is)].map(({ kind, says }) =>
        say(is, kind, says, kind === 'moved' ? [boxOf(was), boxOf(is)] : [boxOf(is)]),
      );
    }),
    ...added.map((object) => say(object, 'added', `is new: ${size(object)}`, [boxOf(object)])),
    ...removed.map((object) => say(object, 'removed', `is gone: it was ${size(object)}`, [boxOf(object)])),
  ];
}

/** Two objects may be one under different ids if they lie within half the larger one's diagonal of each other. */
function nearness(a: Placed | Zone, b: Placed | Zone): number | undefined {
  const [one, other] = [boxOfObject(a), boxOfObject(b)];
  const diagonal = Math.max(Math.hypot(one.width, one.height), Math.hypot(other.width, other.height));
  const far = Math.hypot(
    one.x + one.width / 2 - other.x - other.width / 2,
    one.y + one.height / 2 - other.y - other.height / 2,
  );
  return far <= diagonal / 2 ? far : undefined;
}

function sizeInWords(object: Placed | Zone): string {
  const { x, y, width, height } = boxOfObject(object);
  return `${figure(width)} × ${figure(height)} mm at ${pointInWords([x, y])}`;
}

export function pointInWords([x, y]: readonly [number, number]): string {
  return `(${figure(x)}, ${figure(y)})`;
}

function boxOfLine({ from, to }: SurveyLine): MmBox {
  return {
    x: Math.min(from[0], to[0]),
    y: Math.min(from[1], to[1]),
    width: Math.abs(from[0] - to[0]),
    height: Math.abs(from[1] - to[1]),
  };
}

/** A line is the same whichever end it is drawn from. */
function lineShift(before: SurveyLine, after: SurveyLine): Says[] {
  const ends = [before.from, before.to];
  const straight = [after.from, after.to];
  if (isSame(ends, straight, sameLength) || isSame(ends, straight.toReversed(), sameLength)) return [];
  const [dx, dy] = [after.from[0] - before.from[0], after.from[1] - before.from[1]];
  const isMoved = isSame([after.to[0] - dx, after.to[1] - dy], before.to, sameLength);
  return [
    isMoved
      ? { kind: 'moved', says: `moved ${wayInWords(dx, dy)}` }
      : { kind: 'changed', says: `is now from ${pointInWords(after.from)} to ${pointInWords(after.to)}` },
  ];
}
