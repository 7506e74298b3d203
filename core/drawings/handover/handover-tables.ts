import { productsOf } from '../../build-up/resolve';
import { isoDay } from '../../job/day';
import type { Handover } from '../../job/handover-schema';
import type { Job } from '../../job/schema';
import type { Programme } from '../../programme/programme';
import { itemOfProduct } from '../../quantities/need';
import type { TakeOff } from '../../quantities/take-off';
import { clientWidth as width } from '../client-pages';
import { workDays } from '../day-plan';
import type { FlowColumn, FlowRow } from '../flow-table';
import { blank, dayOrBlank } from '../ready-dates';

/** A table of the record: what was entered, and blanks for what will be written by hand. */
export interface RecordTable {
  readonly columns: readonly FlowColumn[];
  readonly rows: readonly FlowRow[];
}

/** Ruled lines for snags that are seen at the handover itself. */
const blankSnags = 5;

const row = (...cells: string[]): FlowRow => ({ kind: 'row', cells });
const left = (heading: string, share: number): FlowColumn => ({
  heading,
  align: 'left',
  width: width * share,
});

/** Every product of the take-off, with the numbers of its batches. */
export function batchTable(job: Job, { lines }: TakeOff): RecordTable {
  const batches = job.handover?.batches ?? [];
  const numbersOf = (id: string) =>
    batches.flatMap(({ product, number }) => (product === id && number ? [number] : [])).join(', ');
  const ordered = lines.map(({ item }) => item);
  const products = [...productsOf(job).values()];
  const used = products.filter(({ id }) => ordered.includes(itemOfProduct(id)) || numbersOf(id));
  return {
    columns: [left('Product', 0.5), left('Maker’s name for it', 0.22), left('Batch numbers', 0.28)],
    rows: used.map(({ id, name }) => row(name, blank, numbersOf(id) || blank)),
  };
}

/** The air of the room on every day of work, and on other days that were recorded. */
export function climateTable({ handover }: Job, programme: Programme): RecordTable {
  const recorded = new Map((handover?.climate ?? []).map((entry) => [entry.date, entry]));
  const isDated = programme.settings.dayOne === null;
  const planned = isDated ? workDays(programme).map(({ day }) => isoDay(day)) : [];
  const days = [...new Set([...planned, ...recorded.keys()])].sort();
  const figure = (value: number | undefined, unit: string) =>
    value === undefined ? `________ ${unit}` : `${value} ${unit}`;
  const rows = days.map((date) => {
    const entry = recorded.get(date);
    return row(dayOrBlank(date), figure(entry?.temperature, '°C'), figure(entry?.humidity, '%'), blank);
  });
  const empty = Array.from({ length: 6 }, () => row(blank, '________ °C', '________ %', blank));
  return {
    columns: [left('Day', 0.28), left('Air', 0.18), left('Humidity', 0.18), left('Read by', 0.36)],
    rows: rows.length > 0 ? rows : empty,
  };
}

/** What is to be put right, and room for more. */
export function snagTable({ snags = [] }: Handover): RecordTable {
  const entered = snags.map(({ words, by = '', done }, i) =>
    row(String(i + 1), words, by || blank, done ? 'done' : '____________'),
  );
  const empty = Array.from({ length: blankSnags }, (_, i) =>
    row(String(snags.length + i + 1), '', blank, '____________'),
  );
  return {
    columns: [left('No.', 0.07), left('What', 0.5), left('By', 0.25), left('Put right on', 0.18)],
    rows: [...entered, ...empty],
  };
}
