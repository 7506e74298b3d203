import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { identifier, length, text } from './schema-values';

/*
 * What is recorded while a job is built and goes to the client at the end. Every field is optional: what nobody has
 * recorded stands in the handover pack as a blank to be filled in by hand.
 */

const mostEntries = 500;
const day = v.pipe(text, v.description('ISO 8601 day.'));
const list = <const Item extends v.GenericSchema>(item: Item) =>
  v.pipe(v.array(item), v.maxLength(mostEntries));

const batch = namedFields({
  product: identifier,
  number: v.optional(v.pipe(text, v.description('Of the batch or lot, as it stands on the pack.')), ''),
});

const climate = v.pipe(
  namedFields({
    date: v.optional(day, ''),
    temperature: v.optional(
      v.pipe(length, v.minValue(-40), v.maxValue(60), v.description('Of the air in the room, °C.')),
    ),
    humidity: v.optional(
      v.pipe(length, v.minValue(0), v.maxValue(100), v.description('Relative, of that air, per cent.')),
    ),
  }),
  v.description('The air of the room on a day of work.'),
);

const snag = v.pipe(
  namedFields({
    words: v.optional(text, ''),
    by: v.optional(v.pipe(text, v.description('Until when, or by whom, it is put right.'))),
    done: v.optional(v.boolean()),
  }),
  v.description('Something to be put right.'),
);

export const handoverSchema = v.pipe(
  namedFields({
    batches: v.optional(list(batch)),
    testPatch: v.optional(v.pipe(text, v.description('Where it is, what was tried on it, what came of it.'))),
    climate: v.optional(list(climate)),
    snags: v.optional(list(snag)),
    warranty: v.optional(
      v.pipe(
        v.string(),
        v.maxLength(limits.longestTerms),
        v.description("The firm's own terms, in its own words."),
      ),
    ),
  }),
  v.description('What is handed over to the client with the wall.'),
);

export type Handover = v.InferOutput<typeof handoverSchema>;
