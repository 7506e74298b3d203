import { edgeDistance, neighbourDistance } from '../holding/derating';
import type { MapBand, MapQuestion } from '../holding/holding-map';
import { across } from '../holding/magnet';
import { mapBasis } from '../holding/map-basis';
import { consequenceWords } from '../holding/safety';
import { sentence } from '../job/names';
import type { Job } from '../job/schema';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { headingBlock, listBlocks, paragraphBlock } from './client-blocks';
import { layHeading, layRows, type FlowBlock, type FlowColumn, type FlowRow } from './flow-table';
import type { TextMeasure } from './page';
import { sentenceOnPaper } from './paper-figures';
import type { PrintedBand } from './printed-bands';

/** What is on the map, for what magnet, and what must not be read into it. @param write a length with its unit */
export function howToRead({ magnet, reach, use }: MapQuestion, write: (length: Mm) => string): string[] {
  const [edge, neighbour] = [edgeDistance, neighbourDistance].map((times) => write(times * across(magnet)));
  return [
    `One magnet ${magnet.name} with a hook on it, the weight ${write(reach)} from the wall: ${consequenceWords[use]}.`,
    'Large: what may hang there, magnet and hook weighed with it. Beneath: pull straight off the wall, and number in the key.',
    `Near an edge: the magnet’s rim is nearer than ${edge} to an edge, joint, hole or screw head, and half of its pull is counted. Blank: it would not lie wholly on steel or coating, and nothing holds.`,
    `For the magnet’s middle, with no other magnet within ${neighbour} of it.`,
  ];
}

/** The bands in full, then what is taken for granted and where it all comes from. */
export function tablesOfMap(
  job: Job,
  wall: WorkedWall,
  question: MapQuestion,
  mapped: readonly MapBand[],
  bands: readonly PrintedBand[],
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const say = (text: string) => comma(sentenceOnPaper(text, job.units));
  const { assumptions, sources } = mapBasis(job, wall.survey.wall, wall.zones, question, mapped);
  const rows = bands.flatMap((band): FlowBlock[] => {
    const row = layRows(columns, [rowOf(band)], measure);
    if (band.reasons.length === 0) return row;
    const why = paragraphBlock(band.reasons.map(say).join(' '), Math.min(width, widest), measure, {
      indent: columns[0]!.width,
      above: 1,
    });
    return [...row.map((block) => ({ ...block, keepWithNext: true })), why];
  });
  const list = (heading: string, sentences: readonly string[]) =>
    sentences.length === 0
      ? []
      : [
          headingBlock(heading, Math.min(width, widest)),
          ...listBlocks(sentences, Math.min(width, widest), measure),
        ];
  return [
    { ...layHeading(columns, measure), keepWithNext: true },
    ...rows,
    ...list('Taken for granted', assumptions.map(say)),
    ...list('Sources', sources.map(comma).map(sentence)),
  ];
}

function rowOf(band: PrintedBand): FlowRow {
  const cells = [
    `(${band.number})`,
    band.words,
    band.pull || '–',
    band.leastPull || '–',
    band.ifTested || '–',
    band.asked > 0 ? String(band.asked) : '–',
    band.place,
    band.known || '–',
    band.zones.join(', '),
    marksInWords(band.panels) || '–',
  ];
  return { kind: 'row', cells };
}

/** Longer lines are hard to follow. */
const widest: Mm = 257;

const columns: readonly FlowColumn[] = [
  { heading: 'Band', align: 'left', width: 13 },
  { heading: 'On a hook', align: 'left', width: 30 },
  { heading: 'pull', align: 'right', width: 19 },
  { heading: 'at least', align: 'right', width: 19 },
  { heading: 'if tested', align: 'right', width: 21 },
  { heading: 'times over', align: 'right', width: 19 },
  { heading: 'where', align: 'left', width: 40 },
  { heading: 'known by', align: 'left', width: 36 },
  { heading: 'zone', align: 'left', width: 16 },
  { heading: 'panels', align: 'left', width: 44 },
];

/** `A-Z1-01 to 12, A-Z1-15`: marks that follow each other as one. */
export function marksInWords(marks: readonly string[]): string {
  const runs: { prefix: string; from: string; to: string; next: number }[] = [];
  for (const mark of marks) {
    const [, prefix, digits] = /^(.*?)(\d+)$/.exec(mark) ?? [];
    const last = runs.at(-1);
    if (last && prefix !== undefined && last.prefix === prefix && last.next === Number(digits)) {
      last.to = digits!;
      last.next += 1;
    } else runs.push({ prefix: prefix ?? mark, from: digits ?? '', to: '', next: Number(digits) + 1 });
  }
  const most = 20;
  const said = runs
    .slice(0, most)
    .map(({ prefix, from, to }) => `${prefix}${from}${to && ` to ${to}`}`)
    .join(', ');
  const left = runs.slice(most).length;
  return left > 0 ? `${said} and others` : said;
}

function comma(text: string): string {
  return text.replace(/(?<=\d)\.(?=\d)/g, ',');
}
