import { nameOfWall, sentence } from '../names';
import type { Job, Wall } from '../schema';
import { boxOfVertices, pointOf, type MmBox } from '../shape';
import { figure, isSame, sameLength, told, type Difference } from './difference';
import { colourWords, cornerInWords, measuresInWords, skirtingInWords } from './field-words';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists, type Matched } from './match';
import { shapeDifferences } from './place';

const wallWords: FieldList = {
  name: { label: 'name' },
  room: { label: 'room' },
  delivery: { label: 'delivery' },
  corner: { label: 'right end', whole: cornerInWords },
  checkMeasures: { label: 'check measures', say: measuresInWords },
  colour: colourWords,
  skirting: { label: 'skirting', say: skirtingInWords, absent: 'none' },
  surveyed: {
    label: 'survey',
    usual: true,
    whole: (to) => (to === false ? 'is put down for a budget, not measured' : 'is measured on site now'),
  },
  surveyedBy: { label: 'surveyed by', absent: 'not said' },
  surveyedOn: { label: 'surveyed on', say: String, absent: 'not said' },
};

const rimWords: FieldList = Object.fromEntries(
  ['floor', 'ceiling', 'left', 'right'].map((side) => [side, { label: `rim at the ${side}`, unit: 'mm' }]),
);

const elsewhere = [
  ...['id', 'outline', 'rim', 'openings', 'fittings', 'lines', 'zones'],
  ...['ground', 'fixingPoints', 'photo', 'pins', 'hung', 'peopleBelow'],
];

/** mm about a corner that has moved. */
const aboutCorner = 100;

/** By their ids, else by their names or by outlines that are the same. */
export function matchWalls(before: Job, after: Job): Matched<Wall> {
  return matchLists(before.walls, after.walls, (was, is) => {
    const isSameOutline = isSame(was.outline, is.outline, sameLength);
    if (was.name !== '' && was.name === is.name) return isSameOutline ? 0 : 1;
    return isSameOutline && was.name === is.name ? 2 : undefined;
  });
}

/** The wall itself: its outline, its rim, what it is called; not what is on it. */
export function wallDifferences(before: Wall, after: Wall): Difference[] {
  const say = (kind: Difference['kind'], says: string, places: readonly MmBox[] = []): Difference => ({
    kind,
    subject: 'wall',
    wall: after.id,
    text: told(sentence(nameOfWall(after)), says),
    places,
  });
  const fields = [
    ...fieldDifferences(before, after, wallWords, elsewhere),
    ...fieldDifferences(before.rim, after.rim, rimWords),
  ];
  return [
    ...(before.id === after.id ? [] : [say('changed', `was listed as ${before.id} before`)]),
    ...shapeDifferences(before.outline, after.outline).map(({ kind, says }) =>
      say(kind, says, changedCorners(before, after)),
    ),
    ...fields.map(({ says }) => say('changed', says)),
  ];
}

export function addedWall(wall: Wall): Difference {
  return wholeWall(wall, 'added', 'is new');
}

export function removedWall(wall: Wall): Difference {
  return wholeWall(wall, 'removed', 'is gone');
}

function wholeWall(wall: Wall, kind: 'added' | 'removed', says: string): Difference {
  const { width, height } = boxOfVertices(wall.outline);
  const counts = [
    ...[wall.openings.length && `${wall.openings.length} opening`],
    ...[wall.fittings.length && `${wall.fittings.length} fitting`],
    ...[wall.zones.length && `${wall.zones.length} zone`],
  ].flatMap((words) => (words ? [words.startsWith('1 ') ? words : `${words}s`] : []));
  const size = `${figure(width)} × ${figure(height)} mm`;
  const text = `${sentence(nameOfWall(wall))} ${says}: ${[size, ...counts].join(', ')}.`;
  return { kind, subject: 'wall', wall: wall.id, text, places: [] };
}

/** A box about every corner that stands where none stood; all of them if there are many. */
function changedCorners(before: Wall, after: Wall): MmBox[] {
  const was = before.outline.map(pointOf);
  const stood = (x: number, y: number) => was.some((point) => isSame([point.x, point.y], [x, y], sameLength));
  const moved = after.outline.map(pointOf).filter(({ x, y }) => !stood(x, y));
  if (moved.length === 0 || moved.length > 6) return [boxOfVertices(after.outline)];
  return moved.map(({ x, y }) => ({
    x: x - aboutCorner,
    y: y - aboutCorner,
    width: 2 * aboutCorner,
    height: 2 * aboutCorner,
  }));
}
