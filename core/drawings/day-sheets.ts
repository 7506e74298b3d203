import type { Programme } from '../programme/programme';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import { cautions } from './cautions';
import { dayBlocks, dayTitle } from './day-blocks';
import { workDays, type WorkDay } from './day-plan';
import { dealOut, stack, type FlowBlock } from './flow-table';
import type { LodeplanDocument, Page, TextMeasure } from './page';
import { tradePage, upright, type TradeDocument } from './trade-page';

/**
 * A page for every day on which the crew works: what is done in which order, what is mixed, what dries until when, what must
 * wait and for what, and room for the readings of the day. A day with more than a page holds goes on on the next.
 * No pages if there is nothing to do.
 */
export function daySheets(
  worked: WorkedOut,
  programme: Programme,
  takeOff: TakeOff,
  measure: TextMeasure,
): LodeplanDocument {
  const { job } = worked;
  const dealt = workDays(programme).flatMap((day) => {
    const document = sheetOf(worked, day, programme);
    const room = (sheet: number) => {
      const { top, bottom } = tradePage(document, sheet, 2, measure).space;
      return top - bottom;
    };
    const blocks = dayBlocks(worked, day, programme, takeOff, measure);
    return dealOut(blocks, room(2), room(1)).map((own, i) => ({ document, own, isFirst: i === 0 }));
  });
  return {
    name: 'day-sheets',
    title: `${job.name}: day sheets`,
    pages: dealt.map((page, i): Page => pageOf(page, i + 1, dealt.length, measure)),
  };
}

function pageOf(
  { document, own, isFirst }: { document: TradeDocument; own: readonly FlowBlock[]; isFirst: boolean },
  sheet: number,
  sheets: number,
  measure: TextMeasure,
): Page {
  const { items, space } = tradePage(document, sheet, sheets, measure, undefined, isFirst);
  return upright([...items, ...stack(own, space.left, space.top)]);
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
