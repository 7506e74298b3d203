import type { Marking, MarkingKind } from '../job/marking-schema';
import { sizeOfMarking } from '../job/markings';

/** What kinds of markings are called. */
export const markingKindWords: Readonly<Record<MarkingKind, string>> = {
  'ruled-grid': 'ruled grid',
  'ruled-lines': 'ruled lines',
  table: 'table',
  board: 'board of squares',
  picture: 'picture',
};

/** `M1 Week plan`, or only `M1`. */
export function titleOfMarking({ id, name }: Pick<Marking, 'id' | 'name'>): string {
  return name ? `${id} ${name}` : id;
}

/** What a marking is made of, lengths written by the caller: `8 × 8 squares of 150`. */
export function makeOfMarking(marking: Marking, write: (length: number) => string): string {
  const {
    kind,
    spacingAcross = 0,
    spacingUp = 0,
    columns = [],
    rows = [],
    across = 1,
    up = 1,
    side = 0,
  } = marking;
  switch (kind) {
    case 'ruled-grid':
      return `every ${write(spacingAcross)} across, every ${write(spacingUp)} up`;
    case 'ruled-lines':
      return `every ${write(spacingUp)} up`;
    case 'table':
      return `${countOf(columns.length, 'column')}, ${countOf(rows.length, 'row')}`;
    case 'board':
      return `${across} × ${up} squares of ${write(side)}${marking.tones === 'two' ? ', every other one filled' : ''}`;
    case 'picture': {
      const { width, height } = sizeOfMarking(marking);
      return `${write(width)} × ${write(height)}`;
    }
  }
}

function countOf(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}
