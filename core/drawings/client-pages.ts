import { dayInWords } from '../job/day-in-words';
import { chosenTitle } from '../job/alternatives';
import type { Job } from '../job/schema';
import { termsOf } from '../offer/usual-prices';
import type { Mm } from '../units';
import { budgetField } from './budget-words';
import { clientMargin as margin } from './client-header';
import { dealOut, stack, type FlowBlock } from './flow-table';
import { rule } from './client-blocks';
import type { Item, Page, Text, TextMeasure } from './page';
import { cornersOf, pageSize } from './paper';
import { fitText, wrapText } from './text';

/*
 * Upright pages for the client: who offers and what it is at the head of the first, a line at the head of the others, job
 * and page number at the foot.
 */

const { width, height } = pageSize({ format: 'A4', landscape: false });
const footLine = 17;
const bottom = footLine + 3;

/** mm between the margins. */
export const clientWidth: Mm = width - 2 * margin;

export interface ClientPaper {
  readonly job: Job;
  /** `Offer` */
  readonly title: string;
  /** Label and value pairs at the right of the head. */
  readonly facts: readonly (readonly [label: string, value: string])[];
  /** In red lead under the title; empty: nothing. */
  readonly status?: string;
}

/** A block of a table, whose heading stands over it again where it begins a page. */
export interface ClientBlock extends FlowBlock {
  readonly heading?: FlowBlock;
}

export function clientPages(
  paper: ClientPaper,
  blocks: readonly ClientBlock[],
  measure: TextMeasure,
): Page[] {
  const head = firstHead(paper, measure);
  const nextTop = height - margin - 8;
  const forHeading = Math.max(0, ...blocks.map(({ heading }) => heading?.height ?? 0));
  const dealt: (readonly ClientBlock[])[] = dealOut(
    blocks,
    nextTop - bottom - forHeading,
    head.bottom - bottom,
  );
  return dealt.map((own, i) => ({
    format: 'A4',
    landscape: false,
    items: [
      {
        kind: 'fill',
        rings: [cornersOf({ left: 0, bottom: 0, right: width, top: height })],
        colour: 'white',
      },
      ...(i === 0 ? head.items : nextHead(paper, measure)),
      ...(i === 0
        ? stack(own, margin, head.bottom)
        : stack([...(own[0]?.heading ? [own[0].heading] : []), ...own], margin, nextTop)),
      ...foot(paper, i + 1, dealt.length, measure),
    ],
  }));
}

/** That walls of the job are a budget, as the title says it; nothing where all are surveyed. */
export function statusOf({ walls }: Job): string {
  return budgetField(walls.filter(({ zones }) => zones.length > 0)).status ?? '';
}

function firstHead(
  { job, title, facts, status }: ClientPaper,
  measure: TextMeasure,
): { items: Item[]; bottom: Mm } {
  const top = height - margin + 4;
  const half = clientWidth * 0.56;
  const [owner = '', ...address] = termsOf(job).offeredBy.split('\n');
  const lines = [owner, ...address.flatMap((line) => wrapText(line, half, 2.5, {}, measure))].slice(0, 6);
  const ownerText = lines.map((text, i): Text => ({
    kind: 'text',
    text,
    at: { x: margin, y: top - 3.5 - (i === 0 ? 0 : 1.4 + i * 4.2) },
    height: i === 0 ? 3.5 : 2.5,
    weight: i === 0 ? 'semi-bold' : 'regular',
    colour: i === 0 ? 'ink' : 'soft',
  }));
  const factRoom = clientWidth * 0.4;
  const factText = facts.flatMap(([label, value], i): Text[] => {
    const y = top - 3.5 - i * 4.8;
    const style = { kind: 'text', height: 2.5, colour: 'ink' } as const;
    return [
      fitText(
        { ...style, text: label, at: { x: width - margin - factRoom, y }, colour: 'soft' },
        24,
        measure,
      ),
      fitText({ ...style, text: value, at: { x: width - margin, y }, anchor: 'end' }, factRoom - 26, measure),
    ];
  });
  const under = top - 10 - Math.max(lines.length * 4.2, facts.length * 4.8);
  const heading: Text = {
    kind: 'text',
    text: `${title}: ${job.name}`,
    at: { x: margin, y: under - 7 },
    height: 7,
    weight: 'semi-bold',
    colour: 'ink',
  };
  const beneath = [chosenTitle(job), job.client && `for ${job.client}`].filter(Boolean).join(', ');
  const supplement: Text = {
    kind: 'text',
    text: beneath.charAt(0).toUpperCase() + beneath.slice(1),
    at: { x: margin, y: under - 14.5 },
    height: 3.5,
    colour: 'soft',
  };
  const stated: Text = {
    kind: 'text',
    text: status ?? '',
    at: { x: margin, y: under - (beneath ? 21.5 : 14.5) },
    height: 3.5,
    weight: 'semi-bold',
    colour: 'red-lead',
  };
  const items = [
    ...ownerText.map((text) => fitText(text, half, measure)),
    ...factText,
    fitText(heading, clientWidth, measure),
    ...(beneath ? [fitText(supplement, clientWidth, measure)] : []),
    ...(status ? [fitText(stated, clientWidth, measure)] : []),
  ];
  return { items, bottom: under - 13 - (beneath ? 7 : 0) - (status ? 7 : 0) };
}

function nextHead({ job, title }: ClientPaper, measure: TextMeasure): Item[] {
  const text: Text = {
    kind: 'text',
    text: `${title}: ${job.name}`,
    at: { x: margin, y: height - margin },
    height: 2.5,
    colour: 'soft',
  };
  return [
    fitText(text, clientWidth, measure),
    rule(margin, clientWidth, height - margin - 2.4, 0.18, 'hairline'),
  ];
}

function foot({ job }: ClientPaper, page: number, pages: number, measure: TextMeasure): Item[] {
  const end = `page ${page} of ${pages}`;
  const revision = job.revision ? `revision ${job.revision}` : 'no revision issued';
  const words = [job.reference, revision, dayInWords(job.date)].filter(Boolean).join(', ');
  const style = { kind: 'text', height: 2.5, colour: 'soft' } as const;
  return [
    rule(margin, clientWidth, footLine, 0.18, 'hairline'),
    fitText(
      {
        ...style,
        text: words.charAt(0).toUpperCase() + words.slice(1),
        at: { x: margin, y: footLine - 4.5 },
      },
      clientWidth - measure(end, 2.5) - 6,
      measure,
    ),
    { ...style, text: end, at: { x: width - margin, y: footLine - 4.5 }, anchor: 'end' },
  ];
}
