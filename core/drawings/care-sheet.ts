import { buildUpKind } from '../job/build-up-kinds';
import type { OfferInputs } from '../offer/offer-inputs';
import { lastingCautions } from '../offer/scope-words';
import { termsOf } from '../offer/usual-prices';
import type { WorkedOut } from '../worked-out';
import { cautions } from './cautions';
import { headingBlock, listBlocks } from './client-blocks';
import { clientPages, clientWidth as width, statusOf } from './client-pages';
import type { FlowBlock } from './flow-table';
import type { LodeplanDocument, TextMeasure } from './page';
import { dayOrBlank, readyDateBlocks } from './ready-dates';

/** Common practice, no source; the makers' words go before them. */
const usualCleaning: Readonly<Record<'writable' | 'chalk' | 'plain', string>> = {
  writable:
    'Writable surfaces: wipe writing off dry and soon, with a soft clean cloth or felt; now and then with a damp cloth and a little mild soap, then clear water, then dry.',
  chalk:
    'Chalk surfaces: wipe with a dry felt; wash with clear water and a soft sponge, and let dry before chalk goes on again.',
  plain: 'Painted surfaces: dust with a soft cloth; wipe damp without pressure.',
};

const neverClean =
  'Use nothing that scratches, no solvent and no cleaner with alcohol or ammonia, unless the maker of the surface allows it.';

const askForPens =
  'No pens or chalks are recorded as tried here: ask for the maker’s list, try in a corner first.';

/**
 * What the client keeps: from when the surfaces may be used, what to write with, how to clean, and the cautions that go
 * with the wall, which come from the job. No pages for a job without zones.
 *
 * @param ready days by zone; what is not known stands as a blank to be filled in by hand
 */
export function careSheet(
  worked: WorkedOut,
  { ready, handover }: Pick<OfferInputs, 'ready' | 'handover'>,
  measure: TextMeasure,
): LodeplanDocument {
  const { job, walls } = worked;
  const kinds = job.walls.flatMap(({ zones }) => zones.map(({ buildUp }) => buildUpKind(buildUp)));
  const { pens = '', cleaning = '' } = termsOf(job).care;
  const surfaces = (['writable', 'chalk', 'plain'] as const).filter((surface) =>
    kinds.some((kind) => kind.surface === surface),
  );
  const isWritten = kinds.some(({ surface }) => surface !== 'plain');
  const isMagnetic = kinds.some(({ magnetic }) => magnetic !== 'none');
  const list = (sentences: readonly string[], colour?: 'red-lead') =>
    listBlocks(sentences.filter(Boolean), width, measure, colour);
  const blocks: FlowBlock[] = [
    headingBlock('From when it may be used', width),
    ...readyDateBlocks(worked, ready, measure),
    ...list([
      'Before these days the surfaces look dry and are not hard yet: what is written may stay for good, and magnets may press marks into them.',
    ]),
    ...(isWritten
      ? [headingBlock('What to write with', width), ...list(pens ? pens.split('\n') : [askForPens])]
      : []),
    headingBlock('Cleaning', width),
    ...list(
      cleaning ? cleaning.split('\n') : [...surfaces.map((surface) => usualCleaning[surface]), neverClean],
    ),
    ...(isMagnetic
      ? [
          headingBlock('Magnets', width),
          ...list([
            'Try on the wall what a magnet carries before you rely on it, with the real thing and some to spare.',
            'Lift magnets off; slid over the surface they wear it, above all with grit under them.',
          ]),
        ]
      : []),
    headingBlock('Cautions', width, 'red-lead'),
    ...list([...lastingCautions(job), ...(isMagnetic ? [cautions.overhead] : [])], 'red-lead'),
  ];
  const facts: [string, string][] = [
    ...(job.reference ? [['Reference', job.reference] as [string, string]] : []),
    ['Handed over', dayOrBlank(handover)],
  ];
  return {
    name: 'care-sheet',
    title: `${job.name}: care sheet`,
    pages: walls.some(({ zones }) => zones.length > 0)
      ? clientPages({ job, title: 'Care sheet', facts, status: statusOf(job) }, blocks, measure)
      : [],
  };
}
