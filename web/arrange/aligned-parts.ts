import type { AlignedPart } from '../../core/job/arrange';

/** What can be aligned, in the words of its buttons and of its commands, and the keys of these. */
export const alignedParts: readonly {
  readonly part: AlignedPart;
  readonly word: string;
  readonly title: string;
  readonly keys: string;
}[] = [
  { part: 'left', word: 'Left', title: 'Align by their left edges', keys: 'A L' },
  { part: 'right', word: 'Right', title: 'Align by their right edges', keys: 'A R' },
  { part: 'foot', word: 'Foot', title: 'Align by their feet', keys: 'A F' },
  { part: 'top', word: 'Top', title: 'Align by their tops', keys: 'A T' },
  { part: 'level middle', word: 'In a row', title: 'Align side by side, middles at one height', keys: 'A E' },
  {
    part: 'upright middle',
    word: 'In a column',
    title: 'Align one above the other, by their middles',
    keys: 'A U',
  },
];
