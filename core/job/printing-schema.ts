import * as v from 'valibot';
import { namedFields } from './named-fields';
import { papers } from './paper-sizes';
import { identifier, length } from './schema-values';

/*
 * How documents that go by the paper in the printer are dealt out to it. Every field is optional: usual values stand in
 * for what is absent. That labels have room on their sheet is checked in `check-printing.ts`.
 */

const onPaper = v.pipe(length, v.minValue(0), v.maxValue(200), v.description('mm on paper.'));
const count = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(30));

const templates = v.pipe(
  namedFields({
    paper: v.optional(v.picklist(papers)),
    overlap: v.optional(
      v.pipe(
        length,
        v.minValue(5),
        v.maxValue(40),
        v.description('By how much neighbouring pages show the same, mm.'),
      ),
    ),
  }),
  v.description('Of full-size templates.'),
);

const labels = v.pipe(
  namedFields({
    paper: v.optional(v.picklist(papers)),
    columns: v.optional(count),
    rows: v.optional(count),
    left: v.optional(onPaper),
    right: v.optional(onPaper),
    top: v.optional(onPaper),
    bottom: v.optional(onPaper),
    gapAcross: v.optional(v.pipe(onPaper, v.description('Between labels side by side, mm.'))),
    gapDown: v.optional(v.pipe(onPaper, v.description('Between labels one above the other, mm.'))),
    first: v.optional(
      v.pipe(
        v.number(),
        v.integer(),
        v.minValue(1),
        v.maxValue(900),
        v.description('The label to begin with on a sheet that was begun before; counted row by row from 1.'),
      ),
    ),
  }),
  v.description('Sheets of labels for panels: what is left between the margins is shared out evenly.'),
);

const set = v.pipe(
  namedFields({
    leftOut: v.optional(
      v.pipe(
        v.array(identifier),
        v.description('Names of documents that the set does without: `setting-out-A`.'),
      ),
    ),
  }),
  v.description('All documents bound to one file, but for those that are left out.'),
);

export const printing = v.pipe(
  namedFields({
    templates: v.optional(templates),
    labels: v.optional(labels),
    set: v.optional(set),
  }),
  v.description('The papers that a job is printed on.'),
);

export type Printing = v.InferOutput<typeof printing>;
