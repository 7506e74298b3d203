import { alternativesOf } from '../alternatives';
import type { Job, StockSheet } from '../schema';
import { figure, isSame, told, type Difference, type DifferenceSubject } from './difference';
import {
  holdingMapInWords,
  temperaturesInWords,
  thicknessOrderInWords,
  toleranceInWords,
  trimInWords,
  unitsInWords,
} from './field-words';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists } from './match';

const detailWords: FieldList = {
  name: { label: 'name' },
  client: { label: 'client' },
  reference: { label: 'reference' },
  currency: { label: 'currency', say: String },
  units: { label: 'lengths are shown in', usual: 'mm', say: unitsInWords },
  temperatures: { label: 'temperatures of the steel', say: temperaturesInWords, absent: 'not given' },
  holdingMap: { label: 'holding map', say: holdingMapInWords, absent: 'as usual' },
};

/** Compared elsewhere, or what makes a revision and not what it holds. */
const elsewhere = [
  ...['format', 'version', 'revision', 'date', 'revisions', 'walls', 'stock', 'rack', 'cutting'],
  ...['chosenAlternative', 'alternatives', 'photos', 'fittingKinds', 'offer'],
  // Of the paper, not of the wall.
  'printing',
  ...['products', 'buildUps', 'magnets', 'hungKinds'],
];

const cuttingWords: FieldList = {
  method: { label: 'way of cutting', say: (method) => (method === 'free' ? 'free' : 'edge to edge') },
  kerf: { label: 'kerf', unit: 'mm' },
  leastOffcut: { label: 'least offcut', say: (size) => (size as number[]).map(figure).join(' × ') + ' mm' },
};

const stockWords: FieldList = {
  name: { label: 'name' },
  width: { label: 'width', unit: 'mm' },
  height: { label: 'height', unit: 'mm' },
  thickness: { label: 'thickness', say: (mm) => `${String(mm)} mm` },
  price: { label: 'price' },
  hasFace: { label: 'face side' },
  coating: { label: 'coating' },
  steel: { label: 'kind of steel', usual: 'low-carbon', say: (kind) => String(kind).replaceAll('-', ' ') },
  thicknessOrder: { label: 'thickness ordered to', say: thicknessOrderInWords },
  available: { label: 'number to be had' },
  spares: { label: 'spares' },
  trim: { label: 'margins to trim', say: trimInWords },
  tolerance: { label: 'tolerance', say: toleranceInWords },
};

const percent = (of: unknown) => `${figure(of as number)} %`;

const offerWords: FieldList = {
  overhead: { label: 'overhead', say: percent },
  markup: { label: 'markup', say: percent },
  discount: { label: 'discount', say: percent },
  deposit: { label: 'deposit', say: percent },
  retention: { label: 'retention', say: percent },
  visits: { label: 'visits', absent: 'as planned' },
  validityDays: { label: 'days it stands open' },
};

export function detailDifferences(before: Job, after: Job): Difference[] {
  return [
    ...fieldDifferences(before, after, detailWords, elsewhere).map(({ says }) =>
      say('job', told('The job', says)),
    ),
    ...fieldDifferences(before.cutting, after.cutting, cuttingWords).map(({ says }) =>
      say('stock', told('Cutting', says)),
    ),
    ...fieldDifferences(before.offer ?? {}, after.offer ?? {}, offerWords).map(({ says }) =>
      say('job', told('The offer', says)),
    ),
  ];
}

export function stockDifferences(before: Job, after: Job): Difference[] {
  const { pairs, added, removed } = matchLists(before.stock, after.stock, (was, is) =>
    isSame({ ...was, id: '' }, { ...is, id: '' }) ? 0 : undefined,
  );
  const name = ({ id, name: called }: StockSheet) => `Stock sheet ${id}${called ? ` (${called})` : ''}`;
  const size = ({ width, height }: StockSheet) => `${figure(width)} × ${figure(height)} mm`;
  return [
    ...pairs.flatMap(([was, is]) => {
      const renumbered =
        was.id === is.id ? [] : [say('stock', `${name(is)} was listed as ${was.id} before.`)];
      const fields = fieldDifferences(was, is, stockWords, ['id']);
      return [...renumbered, ...fields.map(({ says }) => say('stock', told(name(is), says), is.id))];
    }),
    ...added.map((sheet) => say('stock', `${name(sheet)} is new: ${size(sheet)}.`, sheet.id, 'added')),
    ...removed.map((sheet) =>
      say('stock', `${name(sheet)} is gone: it was ${size(sheet)}.`, sheet.id, 'removed'),
    ),
  ];
}

export function rackDifferences(before: Job, after: Job): Difference[] {
  const { pairs, added, removed } = matchLists(before.rack, after.rack, () => undefined);
  const changed = pairs.filter(([was, is]) => !isSame(was, is)).map(([, piece]) => piece);
  const pieces = (list: readonly { id: string }[]) =>
    list.length === 1 ? '1 rack piece is' : `${list.length} rack pieces are`;
  const listed = (list: readonly { id: string }[]) => {
    const ids = list.slice(0, 8).map(({ id }) => id);
    return list.length > 8 ? `${ids.join(', ')} and ${list.length - 8} more` : ids.join(', ');
  };
  const tell = (list: readonly { id: string }[], kind: Difference['kind'], how: string): Difference[] =>
    list.length === 0 ? [] : [say('rack', `${pieces(list)} ${how}: ${listed(list)}.`, undefined, kind)];
  return [
    ...tell(added, 'added', 'new'),
    ...tell(removed, 'removed', 'gone'),
    ...tell(changed, 'changed', 'not as before'),
  ];
}

/** Which alternative is chosen, and which others came, went or are not as they were. */
export function alternativeDifferences(before: Job, after: Job): Difference[] {
  const [was, is] = [alternativesOf(before), alternativesOf(after)];
  if (was.length < 2 && is.length < 2) return [];
  const chosen = (list: typeof was) => list.find(({ isChosen }) => isChosen)!;
  const { pairs, added, removed } = matchLists(was, is, () => undefined);
  const content = (job: Job, id: string) => job.alternatives?.find((alternative) => alternative.id === id);
  const other = pairs.filter(([{ id, isChosen }, now]) => {
    if (isChosen || now.isChosen) return false;
    return !isSame(content(before, id), content(after, id));
  });
  const one = (text: string, kind: Difference['kind'] = 'changed') =>
    say('alternative', text, undefined, kind);
  return [
    ...(chosen(was).id === chosen(is).id
      ? []
      : [one(`“${chosen(is).title}” is the chosen alternative instead of “${chosen(was).title}”.`)]),
    ...added.map(({ title }) => one(`Alternative “${title}” is new.`, 'added')),
    ...removed.map(({ title }) => one(`Alternative “${title}” is gone.`, 'removed')),
    ...other.map(([, { title }]) => one(`Alternative “${title}”, which is not chosen, is not as before.`)),
  ];
}

function say(
  subject: DifferenceSubject,
  text: string,
  object?: string,
  kind: Difference['kind'] = 'changed',
): Difference {
  return { kind, subject, ...(object !== undefined && { object }), text, places: [] };
}
