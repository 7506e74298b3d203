import type { Mm } from '../units';
import type { Programme } from '../programme/programme';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import { cautions } from './cautions';
import { dayBlocks, dayTitle, dayWidth, type DayBlocks } from './day-blocks';
import { workDays, type WorkDay } from './day-plan';
import { dealOut, heightOf, stack, type FlowBlock } from './flow-table';
import type { LodeplanDocument, Page, TextMeasure } from './page';
import { tradePage, type TradeDocument } from './trade-page';

/** Between two columns of a page on its side. */
const betweenColumns: Mm = 20;

/**
 * A page for every day on which the crew works: what is done in which order, what is mixed, what dries until when, what must
 * wait and for what, and room for the readings of the day. A day with more than an upright A4 holds has A3 on its side, in two
 * columns, and goes on on the next only if that is full. No pages if there is nothing to do.
 */
export function daySheets(
  worked: WorkedOut,
  programme: Programme,
  takeOff: TakeOff,
  measure: TextMeasure,
): LodeplanDocument {
  const { job } = worked;
  const dealt = workDays(programme).flatMap((day) =>
    dealDay(sheetOf(worked, day, programme), dayBlocks(worked, day, programme, takeOff, measure), measure),
  );
  return {
    name: 'day-sheets',
    title: `${job.name}: day sheets`,
    pages: dealt.map((page, i): Page => pageOf(page, i + 1, dealt.length, measure)),
  };
}

interface DayPage {
  readonly document: TradeDocument;
  readonly columns: readonly (readonly FlowBlock[])[];
  readonly isFirst: boolean;
}

function dealDay(document: TradeDocument, { work, watch }: DayBlocks, measure: TextMeasure): DayPage[] {
  const blocks = [...work, ...watch];
  const roomOf = (document: TradeDocument, sheet: number) => {
    const { top, bottom } = tradePage(document, sheet, 2, measure).space;
    return top - bottom;
  };
  const upright = dealOut(blocks, roomOf(document, 1));
  if (upright.length === 1) return [{ document, columns: upright, isFirst: true }];
  const wide: TradeDocument = { ...document, format: 'A3', landscape: true };
  const [first, next] = [1, 2].map((sheet) => roomOf(wide, sheet)) as [Mm, Mm];
  const isEven = [work, watch].every((column) => heightOf(column) <= first);
  const columns = isEven ? [work, watch] : dealOut(blocks, Math.min(first, next));
  return columns.flatMap((column, i) =>
    i % 2 === 0
      ? { document: wide, columns: [column, ...columns.slice(i + 1, i + 2)], isFirst: i === 0 }
      : [],
  );
}

function pageOf(
  { document, columns, isFirst }: DayPage,
  sheet: number,
  sheets: number,
  measure: TextMeasure,
): Page {
  const { format = 'A4', landscape = false } = document;
  const { items, space } = tradePage(document, sheet, sheets, measure, undefined, isFirst);
  return {
    format,
    landscape,
    items: [
      ...items,
      ...columns.flatMap((blocks, i) =>
        stack(blocks, space.left + i * (dayWidth + betweenColumns), space.top),
      ),
    ],
  };
}

function sheetOf({ job }: WorkedOut, day: WorkDay, { settings }: Programme): TradeDocument {
  return {
    job,
    title: dayTitle(day, settings),
    documentType: 'Day sheet',
    notes: [
      'Times are as planned. If a surface is not dry when the plan says so, wait: the wall decides, then the data sheet.',
    ],
    cautions: cautionsOf(
      day,
      job.walls.some(({ fittings }) => fittings.length > 0),
    ),
  };
}

/** Those of the work of this very day. */
function cautionsOf({ steps, waits }: WorkDay, hasFittings: boolean): string[] {
  const kinds = new Set(steps.map(({ task }) => task.kind));
  const has = (...some: readonly string[]) => some.some((kind) => kinds.has(kind as never));
  return [
    ...(has('sand', 'key') ? [cautions.dust] : []),
    ...(has('sand', 'key', 'batten', 'set-out') ? [cautions.concealed] : []),
    ...(has('bond', 'prop') ? [cautions.edges, cautions.lifting] : []),
    ...(has('bond', 'batten') && hasFittings ? [cautions.electrics] : []),
    ...(has('degrease', 'prime', 'metal-primer', 'bonding-coat', 'fill', 'seal', 'coat', 'bond')
      ? [
          'Coatings, cleaners and adhesives: ventilate, protect skin and eyes, follow the maker’s safety data sheet.',
        ]
      : []),
    ...(waits.some(({ kind }) => kind === 'cure')
      ? ['No magnets, no writing and no load before the days on which the zones are ready for them.']
      : []),
  ];
}
