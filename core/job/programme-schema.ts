import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { length } from './schema-values';

/*
 * When the work begins, who works when, and how fast. Every field is optional: usual values stand in for what is absent.
 * That a day exists and that hours leave time to work is checked in `check-programme.ts`.
 */

/** What the crew does, in the order of the work. */
export const taskKinds = [
  'protect',
  'set-out',
  'degrease',
  'key',
  'prime',
  'batten',
  'bond',
  'prop',
  'metal-primer',
  'reinforce',
  'bonding-coat',
  'fill',
  'sand',
  'lamp-check',
  'seal',
  'coat',
  'film',
  'demask',
  'inspection',
  'snags',
] as const;

const day = v.pipe(
  v.string(),
  v.regex(/^\d{4}-\d{2}-\d{2}$/),
  v.description('ISO 8601 day, such as 2026-03-02.'),
);
const time = v.pipe(v.string(), v.regex(/^\d{2}:\d{2}$/), v.description('Time of day, such as 08:30.'));
const positive = v.pipe(length, v.gtValue(0), v.maxValue(100_000));
const hours = v.pipe(length, v.minValue(0), v.maxValue(10_000), v.description('Hours.'));
const degrees = v.pipe(length, v.minValue(-40), v.maxValue(60));
const humidity = v.pipe(length, v.gtValue(0), v.maxValue(100));
const weekday = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(7));

const workingHours = v.pipe(
  namedFields({
    from: v.optional(time),
    to: v.optional(v.pipe(time, v.description('Before `from`: on the next day.'))),
    break: v.optional(
      v.pipe(length, v.integer(), v.minValue(0), v.maxValue(720), v.description('Minutes, at midday.')),
    ),
  }),
  v.description('Of a working day.'),
);

const climate = v.pipe(
  namedFields({
    temperature: v.optional(v.pipe(degrees, v.description('Of the air, °C.'))),
    humidity: v.optional(v.pipe(humidity, v.description('Relative, per cent.'))),
    surface: v.optional(v.pipe(degrees, v.description("Of the wall's surface, °C; absent: as the air."))),
  }),
  v.description('Of the room while the work is done.'),
);

const slowing = v.pipe(
  namedFields({
    factor: v.optional(
      v.pipe(length, v.minValue(1), v.maxValue(20), v.description('Drying times are multiplied by it.')),
    ),
    below: v.optional(v.pipe(degrees, v.description('Cool is what is colder than this, °C.'))),
    above: v.optional(v.pipe(humidity, v.description('Humid is the air above this, per cent.'))),
  }),
  v.description('How much longer everything takes to dry where it is cool or humid.'),
);

export const programme = v.pipe(
  namedFields({
    start: v.optional(v.pipe(day, v.description('The first day of work on site, ISO 8601.'))),
    ordered: v.optional(
      v.pipe(day, v.description('Materials are ordered on this day, and the work waits for them. ISO 8601.')),
    ),
    crew: v.optional(
      v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(100), v.description('People on site.')),
    ),
    hours: v.optional(workingHours),
    weekdays: v.optional(
      v.pipe(
        v.array(weekday),
        v.maxLength(7),
        v.description('Working days as ISO 8601 numbers them: 1 Monday, 7 Sunday.'),
      ),
    ),
    weekends: v.optional(v.pipe(v.boolean(), v.description('true: Saturdays and Sundays are worked too.'))),
    nights: v.optional(v.pipe(v.boolean(), v.description('true: work goes on round the clock, in shifts.'))),
    holidays: v.optional(
      v.pipe(
        v.array(day),
        v.maxLength(limits.mostHolidays),
        v.description('Days without work, each by itself.'),
      ),
    ),
    leadTime: v.optional(
      v.pipe(length, v.minValue(0), v.maxValue(1_000), v.description('From order to delivery, days.')),
    ),
    acclimatise: v.optional(v.pipe(hours, v.description('Hours that materials lie in the room first.'))),
    climate: v.optional(climate),
    slowing: v.optional(slowing),
    rates: v.optional(
      v.pipe(
        namedFields(
          Object.fromEntries(taskKinds.map((kind) => [kind, v.optional(positive)])) as Record<
            (typeof taskKinds)[number],
            v.OptionalSchema<typeof positive, undefined>
          >,
        ),
        v.description("m² one person does in an hour, by kind of task; before the product's own pace."),
      ),
    ),
    inspection: v.optional(v.pipe(hours, v.description('Hours the inspection takes.'))),
    snags: v.optional(v.pipe(hours, v.description('Hours to put right what it finds.'))),
    visitGap: v.optional(
      v.pipe(hours, v.description('Working hours of waiting after which the crew leaves and comes again.')),
    ),
  }),
  v.description('When the work is done and by whom; absent fields take usual values.'),
);

export type ProgrammeSettings = v.InferOutput<typeof programme>;
export type TaskKind = (typeof taskKinds)[number];
