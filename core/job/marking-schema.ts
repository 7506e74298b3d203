import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { photoId } from './photo-schema';
import { coordinate, identifier, size, text } from './schema-values';

/*
 * Markings: what is ruled, lettered or stuck on a finished zone. They hold on to the zone's left and foot edges, so that
 * they go where it goes. What each kind asks for is checked in `check-markings.ts`.
 */

export const markingKinds = ['ruled-grid', 'ruled-lines', 'table', 'board', 'picture'] as const;
export const markingInks = ['dark', 'light', 'red'] as const;

const headings = (most: number) =>
  v.pipe(v.array(v.pipe(text, v.maxLength(limits.longestHeading))), v.minLength(1), v.maxLength(most));
const squares = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(limits.mostSquares));

export const marking = v.pipe(
  namedFields({
    id: identifier,
    kind: v.picklist(markingKinds),
    name: v.optional(text),
    x: v.pipe(coordinate, v.description("From the left edge of the zone's bounding box.")),
    y: v.pipe(coordinate, v.description("From the foot of the zone's bounding box.")),
    width: v.optional(v.pipe(size, v.description('Of all kinds but a board.'))),
    height: v.optional(v.pipe(size, v.description('Of all kinds but a board.'))),
    spacingAcross: v.optional(
      v.pipe(size, v.description('Ruled grid: between upright lines, from the left.')),
    ),
    spacingUp: v.optional(
      v.pipe(size, v.description('Ruled grid and ruled lines: between level lines, from the foot.')),
    ),
    columns: v.optional(
      v.pipe(headings(limits.mostColumns), v.description('Table: headings of the columns, from the left.')),
    ),
    rows: v.optional(
      v.pipe(headings(limits.mostRows), v.description('Table: headings of the rows, from the top.')),
    ),
    columnWidths: v.optional(
      v.pipe(v.array(size), v.description('Table: one for each column; absent: all are equal.')),
    ),
    rowHeights: v.optional(
      v.pipe(v.array(size), v.description('Table: one for each row; absent: all are equal.')),
    ),
    headingHeight: v.optional(
      v.pipe(
        size,
        v.description('Table: of the row that holds the headings of columns; absent: no such row.'),
      ),
    ),
    headingWidth: v.optional(
      v.pipe(
        size,
        v.description('Table: of the column that holds the headings of rows; absent: no such column.'),
      ),
    ),
    letterHeight: v.optional(
      v.pipe(size, v.description('Table: height of a capital of the headings; absent: 40.')),
    ),
    across: v.optional(v.pipe(squares, v.description('Board: squares in a row.'))),
    up: v.optional(v.pipe(squares, v.description('Board: rows of squares.'))),
    side: v.optional(v.pipe(size, v.description('Board: side of a square.'))),
    tones: v.optional(
      v.pipe(
        v.picklist(['two', 'plain']),
        v.description('Board: every other square filled, the lower left one too; absent: plain.'),
      ),
    ),
    photo: v.optional(v.pipe(photoId, v.description('Picture: its id among the photos of the job.'))),
    stretched: v.optional(
      v.pipe(v.boolean(), v.description('Picture: width and height need not keep its own proportions.')),
    ),
    lineWidth: v.optional(
      v.pipe(
        size,
        v.maxValue(limits.widestMarkingLine),
        v.description('Of every line, about the line that is measured; absent: 3.'),
      ),
    ),
    ink: v.optional(
      v.pipe(v.picklist(markingInks), v.description('absent: light on chalk, dark on anything else.')),
    ),
    colour: v.optional(v.pipe(text, v.description('What the colour is called where it is bought.'))),
  }),
  v.description('A marking on a zone.'),
);

export type Marking = v.InferOutput<typeof marking>;
export type MarkingKind = Marking['kind'];
export type MarkingInk = NonNullable<Marking['ink']>;
