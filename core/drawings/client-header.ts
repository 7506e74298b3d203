import { chosenTitle } from '../job/alternatives';
import { dayInWords } from '../job/day-in-words';
import type { Job, Wall } from '../job/schema';
import { inch } from '../lengths';
import { budgetOnly } from './budget-words';
import type { Item, Text, TextMeasure } from './page';
import { childHeight } from './picture/people';
import { figureHeight } from './standing-figure';
import { fitText } from './text';

/** mm, all round a page for the client. */
export const clientMargin = 22;

export interface PageNumber {
  readonly number: number;
  readonly of: number;
}

/** `Revision B, page 1 of 3` */
export function pageWords({ revision }: Job, { number, of }: PageNumber): string {
  return `${revision ? `Revision ${revision}` : 'No revision issued'}, page ${number} of ${of}`;
}

/** Wall, job and client at the head of a page for the client; that the wall is a budget, where it is. */
export function clientHeader(
  wall: Wall,
  job: Job,
  width: number,
  height: number,
  measure: TextMeasure,
): Item[] {
  const top = height - clientMargin;
  const right = width - clientMargin;
  const half = (width - 2 * clientMargin) / 2;
  const title: Text = {
    kind: 'text',
    text: wall.name || `Wall ${wall.id}`,
    at: { x: clientMargin, y: top - 7 },
    height: 7,
    weight: 'semi-bold',
    colour: 'ink',
  };
  const under: Text = {
    kind: 'text',
    text: [job.name, chosenTitle(job)].filter(Boolean).join(', '),
    at: { x: clientMargin, y: top - 15 },
    height: 3.5,
    colour: 'soft',
  };
  const budget: Text = {
    kind: 'text',
    text: `${budgetOnly}: this wall has not been measured on site yet.`,
    at: { x: clientMargin, y: top - 21.5 },
    height: 3.5,
    weight: 'semi-bold',
    colour: 'red-lead',
  };
  const aside = [job.client && `For ${job.client}`, dayInWords(job.date)].filter(Boolean);
  return [
    fitText(title, half * 1.3, measure),
    fitText(under, half * 1.3, measure),
    ...(wall.surveyed === false ? [fitText(budget, half * 1.3, measure)] : []),
    ...aside.map((line, i) =>
      fitText(
        {
          kind: 'text',
          text: line,
          at: { x: right, y: top - 7 - i * 8 },
          height: 3.5,
          anchor: 'end',
          colour: i === 0 ? 'ink' : 'soft',
        },
        half * 0.66,
        measure,
      ),
    ),
  ];
}

/** Who stands by for scale: in feet to the inch where the job is, since nobody is measured finer. */
export function peopleInWords({ units }: Job): string {
  const tall = (height: number): string => {
    if (units !== 'ft-in') return `${(height / 1000).toFixed(2).replace('.', ',')} m`;
    const inches = Math.round(height / inch);
    return `about ${Math.floor(inches / 12)}'-${inches % 12}"`;
  };
  return `The adult is ${tall(figureHeight)} tall, the child ${tall(childHeight)}.`;
}
