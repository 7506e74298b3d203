import { extentOf } from '../extent';
import type { Marking } from '../marking-schema';
import { boxOfMarking, sizeOfMarking, usualLetterHeight, usualLineWidth } from '../markings';
import type { Wall, Zone } from '../schema';
import {
  figure,
  isSame,
  isSameLength,
  sameLength,
  wayInWords,
  type Difference,
  type Says,
} from './difference';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists } from './match';
import { listDifferences, matchZones } from './objects';

const headings = (list: unknown) => (list as readonly string[]).map((one) => one || '–').join(', ');
const sizes = (list: unknown) => `${(list as readonly number[]).map(figure).join(', ')} mm`;
const mm = (label: string, more: object = {}) => ({ label, unit: 'mm', ...more });

const markingWords: FieldList = {
  kind: { label: 'kind', say: (kind) => String(kind).replaceAll('-', ' ') },
  name: { label: 'name' },
  spacingAcross: mm('spacing across'),
  spacingUp: mm('spacing up'),
  columns: { label: 'columns', say: headings },
  rows: { label: 'rows', say: headings },
  columnWidths: { label: 'widths of columns', say: sizes, absent: 'equal' },
  rowHeights: { label: 'heights of rows', say: sizes, absent: 'equal' },
  headingHeight: mm('height of the headings'),
  headingWidth: mm('width of the headings'),
  letterHeight: mm('height of letters', { usual: usualLetterHeight }),
  across: { label: 'squares across' },
  up: { label: 'rows of squares' },
  side: mm('side of a square'),
  tones: {
    label: 'filling',
    say: (tones) => (tones === 'two' ? 'every other square' : 'none'),
    usual: 'plain',
  },
  photo: { label: 'picture', whole: () => 'shows another picture' },
  stretched: { label: 'stretched', usual: false },
  lineWidth: mm('line width', { usual: usualLineWidth }),
  ink: { label: 'ink', say: String, absent: 'as the surface asks' },
  colour: { label: 'colour' },
};

/** Markings of the zones that both walls have. They count from their zone, so one that moved with it has not. */
export function markingDifferences(before: Wall, after: Wall): Difference[] {
  return matchZones(before, after).pairs.flatMap(([was, is]) =>
    was.markings === is.markings ? [] : inZone(was, is, after.id),
  );
}

function inZone(was: Zone, is: Zone, wallId: string): Difference[] {
  const matched = matchLists(was.markings ?? [], is.markings ?? [], (a, b) =>
    a.kind === b.kind && isSame([a.x, a.y, sizeOfMarking(a)], [b.x, b.y, sizeOfMarking(b)], sameLength)
      ? 0
      : undefined,
  );
  const name = ({ id, name: called }: Marking) =>
    `marking ${id}${called ? ` (${called})` : ''} of zone ${is.id}`;
  // What has gone was in the zone as it was then.
  const boxOf = (marking: Marking) => boxOfMarking(is.markings?.includes(marking) ? is : was, marking);
  return listDifferences(
    matched,
    'zone',
    wallId,
    name,
    boxOf,
    (marking) => {
      const { width, height } = sizeOfMarking(marking);
      const { x, y } = extentOf(is);
      return `${marking.kind.replaceAll('-', ' ')}, ${figure(width)} × ${figure(height)} mm at (${figure(x + marking.x)}, ${figure(y + marking.y)})`;
    },
    (a, b) => [
      ...shift(a, b),
      ...resized(a, b),
      ...fieldDifferences(a, b, markingWords, ['id', 'x', 'y', 'width', 'height']),
    ],
  ).map((difference) => ({ ...difference, object: is.id }));
}

function shift(was: Marking, is: Marking): Says[] {
  const way = wayInWords(is.x - was.x, is.y - was.y);
  return way ? [{ kind: 'moved', says: `moved ${way}` }] : [];
}

function resized(was: Marking, is: Marking): Says[] {
  const [from, to] = [sizeOfMarking(was), sizeOfMarking(is)];
  if (isSameLength(from.width, to.width) && isSameLength(from.height, to.height)) return [];
  // Of a board the side is told, of which its size follows.
  if (was.kind === 'board' && is.kind === 'board') return [];
  const size = ({ width, height }: typeof from) => `${figure(width)} × ${figure(height)} mm`;
  return [{ kind: 'changed', says: `is ${size(to)} instead of ${size(from)}` }];
}
