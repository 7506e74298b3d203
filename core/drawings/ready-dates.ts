import { buildUpKind } from '../job/build-up-kinds';
import { dayNumber } from '../job/day';
import { dayInWords } from '../job/day-in-words';
import type { OfferInputs } from '../offer/offer-inputs';
import type { WorkedOut } from '../worked-out';
import { paragraphBlock } from './client-blocks';
import { clientWidth as width } from './client-pages';
import { layHeading, layRows, type FlowBlock, type FlowColumn } from './flow-table';
import type { TextMeasure } from './page';

/** To be filled in by hand. */
export const blank = '________________';

/** What is no date of the calendar is filled in by hand. */
export function dayOrBlank(date: string | null | undefined): string {
  return date && dayNumber(date) !== null ? dayInWords(date) : blank;
}

/** From when each zone may be used for magnets and for writing, as a table. */
export function readyDateBlocks(
  { job }: Pick<WorkedOut, 'job'>,
  ready: OfferInputs['ready'],
  measure: TextMeasure,
): FlowBlock[] {
  const columns: FlowColumn[] = [
    { heading: 'Zone', align: 'left', width: width - 2 * 42 },
    { heading: 'First magnets', align: 'left', width: 42 },
    { heading: 'First writing', align: 'left', width: 42 },
  ];
  const rows = job.walls.flatMap((wall) =>
    wall.zones.map((zone) => {
      const { label, magnetic, surface } = buildUpKind(zone.buildUp);
      const dates = ready.find((one) => one.wall === wall.id && one.zone === zone.id);
      return {
        kind: 'row' as const,
        cells: [
          `${wall.name || `Wall ${wall.id}`}: ${zone.name || `zone ${zone.id}`}, ${label.toLowerCase()}`,
          magnetic === 'none' ? 'not for magnets' : dayOrBlank(dates?.magnets),
          surface === 'plain' ? 'not for writing' : dayOrBlank(dates?.writing),
        ],
      };
    }),
  );
  return [
    layHeading(columns, measure),
    ...layRows(columns, rows, measure),
    paragraphBlock(' ', width, measure, { below: -2 }),
  ];
}
