import type { PricedJob } from '../../offer/price-job';
import { lastingCautions } from '../../offer/scope-words';
import type { WorkedOut } from '../../worked-out';
import {
  headingBlock,
  listBlocks,
  paragraphBlock,
  runningBlocks,
  signatureBlock,
  spaceBlock,
} from '../client-blocks';
import { clientPages, clientWidth as width, statusOf, type ClientBlock } from '../client-pages';
import { layHeading, layRows } from '../flow-table';
import type { LodeplanDocument, TextMeasure } from '../page';
import { blank, dayOrBlank, readyDateBlocks } from '../ready-dates';
import { asBuiltPlans } from './as-built-plan';
import { batchTable, climateTable, snagTable, type RecordTable } from './handover-tables';

const noTerms =
  'No terms are entered here: they are those of the contract. What the law gives the client stays as it is.';
const askForPatch = 'Where the test patch is, what was tried on it and what came of it:';

/**
 * What goes to the client with the finished wall: from when it may be used, what it is made of with the numbers of the
 * batches, test patch, air during the work, snags, warranty, acceptance; behind it the as-built plan of every wall. What was
 * not recorded stands as a blank to be filled in by hand. No pages for a job without zones.
 */
export function handoverPack(
  worked: WorkedOut,
  { takeOff, programme, inputs }: Pick<PricedJob, 'takeOff' | 'programme' | 'inputs'>,
  measure: TextMeasure,
): LodeplanDocument {
  const { job } = worked;
  const name = 'handover-pack';
  const title = `${job.name}: handover pack`;
  if (job.walls.every(({ zones }) => zones.length === 0)) return { name, title, pages: [] };
  const { testPatch, warranty, ...handover } = job.handover ?? {};
  const table = ({ columns, rows }: RecordTable): ClientBlock[] => {
    const heading = layHeading(columns, measure);
    return [
      { ...heading, keepWithNext: true },
      ...layRows(columns, rows, measure).map((block) => ({ ...block, heading })),
    ];
  };
  const words = (text: string) => runningBlocks(text, width, measure);
  const list = (sentences: readonly string[]) => listBlocks(sentences, width, measure, 'red-lead');
  const batches = batchTable(job, takeOff);
  const blocks: ClientBlock[] = [
    headingBlock('From when it may be used', width),
    ...readyDateBlocks(worked, inputs.ready, measure),
    paragraphBlock(
      'How it is cleaned and what to write with stands on the care sheet, which goes with this pack.',
      width,
      measure,
    ),
    ...(batches.rows.length > 0 ? [headingBlock('What it is made of', width), ...table(batches)] : []),
    headingBlock('Test patch', width),
    ...words(testPatch ?? `${askForPatch} ${blank.repeat(3)}`),
    headingBlock('Air in the room during the work', width),
    ...table(climateTable(job, programme)),
    headingBlock('Snags', width),
    ...table(snagTable(handover)),
    headingBlock('Cautions', width, 'red-lead'),
    ...list([...lastingCautions(job)]),
    headingBlock('Warranty', width),
    ...words(warranty ?? noTerms),
    headingBlock('Acceptance', width),
    {
      ...paragraphBlock(
        'The walls named above were looked at together and handed over with this pack. What is listed under snags is put right by the days that stand there.',
        width,
        measure,
      ),
      keepWithNext: true,
    },
    { ...spaceBlock(4), keepWithNext: true },
    signatureBlock(['For the firm', 'For the client'], width, measure),
  ];
  const facts: [string, string][] = [
    ...(job.reference ? [['Reference', job.reference] as [string, string]] : []),
    ['Handed over', dayOrBlank(inputs.handover)],
  ];
  const paper = { job, title: 'Handover pack', facts, status: statusOf(job) };
  return { name, title, pages: [...clientPages(paper, blocks, measure), ...asBuiltPlans(worked, measure)] };
}
