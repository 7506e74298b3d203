import { nameOfWall, sentence } from '../names';
import type { Job, Photo, Pin, Wall } from '../schema';
import { told, wayInWords, type Difference, type Says } from './difference';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists } from './match';
import { listDifferences, pointInWords } from './objects';

/** An id of a photo is long and says nothing to anybody. */
const pinWords: FieldList = {
  photo: { label: 'photo', whole: () => 'shows another photo' },
  date: { label: 'date', say: String },
  note: { label: 'note' },
};

const percent = (value: unknown) => `${Math.round((value as number) * 100)} %`;

const pointsInWords = (points: unknown) => {
  const { length } = points as readonly unknown[];
  return `by ${length} ${length === 1 ? 'point' : 'points'}`;
};

const wallPhotoWords: FieldList = {
  photo: { label: 'photo', whole: () => 'is another one' },
  points: { label: 'fitted', say: pointsInWords },
  fade: { label: 'faded by', say: percent },
  shown: { label: 'shown' },
};

const photoWords: FieldList = {
  name: { label: 'name of its file' },
  taken: { label: 'taken on', say: String },
};

/** mm about the place that a pin stands at. */
const aboutPin = 50;

/** The photo under the drawing of a wall. */
export function wallPhotoDifferences({ photo: was }: Wall, after: Wall): Difference[] {
  const { photo: is } = after;
  const name = sentence(nameOfWall(after));
  const say = (text: string): Difference => ({
    kind: 'changed',
    subject: 'photo',
    wall: after.id,
    text,
    places: [],
  });
  if (!was && !is) return [];
  if (!was) return [say(`${name} has a photo under its drawing now.`)];
  if (!is) return [say(`${name} no longer has a photo under its drawing.`)];
  return fieldDifferences(was, is, wallPhotoWords).map(({ says }) =>
    say(told(`${name}, photo under the drawing`, says)),
  );
}

/** Photos pinned to places of a wall. */
export function pinDifferences(before: Wall, after: Wall): Difference[] {
  const matched = matchLists(before.pins ?? [], after.pins ?? [], (a, b) =>
    a.photo === b.photo ? Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) : undefined,
  );
  const boxOf = ({ at: [x, y] }: Pin) => ({
    x: x - aboutPin,
    y: y - aboutPin,
    width: 2 * aboutPin,
    height: 2 * aboutPin,
  });
  return listDifferences(
    matched,
    'photo',
    after.id,
    ({ id }) => `pin ${id}`,
    boxOf,
    ({ at }) => `a photo at ${pointInWords(at)}`,
    (was, is) => [...pinShift(was, is), ...fieldDifferences(was, is, pinWords, ['id', 'at'])],
  );
}

function pinShift(was: Pin, is: Pin): Says[] {
  const way = wayInWords(is.at[0] - was.at[0], is.at[1] - was.at[1]);
  return way ? [{ kind: 'moved', says: `moved ${way}` }] : [];
}

/** Photos that the job keeps. Their bytes are told by their ids, whether or not they stand in the file. */
export function photoDifferences(before: Job, after: Job): Difference[] {
  const { pairs, added, removed } = matchLists(before.photos ?? [], after.photos ?? [], () => undefined);
  const say = (text: string, kind: Difference['kind'] = 'changed'): Difference => ({
    kind,
    subject: 'photo',
    text,
    places: [],
  });
  const name = (photo: Photo) => (photo.name ? `Photo “${photo.name}”` : 'A photo without a name');
  return [
    ...pairs.flatMap(([was, is]) =>
      fieldDifferences(was, is, photoWords, ['id', 'data']).map(({ says }) => say(told(name(is), says))),
    ),
    ...added.map((photo) => say(`${name(photo)} is new.`, 'added')),
    ...removed.map((photo) => say(`${name(photo)} is gone.`, 'removed')),
  ];
}
