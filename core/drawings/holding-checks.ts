import { adviseHung } from '../holding/advise';
import { calculationParts } from '../holding/calculation';
import {
  calculationFigure,
  largestWeightWords,
  ledToWords,
  modeWords,
  partWords,
  timesFigure,
  usedFigure,
  type ItemState,
} from '../holding/calculation-words';
import { checkJudged, type HungCheck } from '../holding/check-hung';
import type { WallOfItems } from '../holding/held-item';
import { judgeHung, wallOfItems } from '../holding/judge-wall';
import { holdingCautions } from '../holding/safety';
import { nameOfHung, nameOfWall, sentence as capital } from '../job/names';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { headingBlock, listBlocks, paragraphBlock } from './client-blocks';
import {
  dealOut,
  layHeading,
  layRows,
  stack,
  type FlowBlock,
  type FlowColumn,
  type FlowRow,
} from './flow-table';
import { hungSketch } from './hung-sketch';
import type { LodeplanDocument, Page, TextMeasure } from './page';
import { paperFigures, sentenceOnPaper } from './paper-figures';
import { refuseWithoutCautions } from './refuse-without-cautions';
import { stateMark } from './state-mark';
import { upright } from './trade-page';
import { fieldsOfJob, frameAndTitleBlock } from './title-block';

const name = 'holding-checks';

/**
 * What hangs on the walls, item by item: where, whether it holds, what governs, the calculation, what it takes for granted
 * and what to change. Each item begins a page; the cautions stand on every one. No pages where nothing hangs.
 *
 * @throws Error if a page would be without its cautions
 */
export function holdingChecks(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const { job } = worked;
  const drafts = worked.walls.flatMap((wall) => pagesOfWall(worked, wall, measure));
  const pages = drafts.map((draft, i): Page => {
    const { items, space } = frame(worked, draft, i + 1, drafts.length, measure);
    return upright([...items, ...stack(draft.blocks, space.left, space.top)]);
  });
  return { name, title: `${job.name}: holding checks`, pages: refuseWithoutCautions(pages) };
}

interface Draft {
  readonly title: string;
  readonly blocks: readonly FlowBlock[];
}

function frame(
  worked: WorkedOut,
  { title }: Pick<Draft, 'title'>,
  sheet: number,
  sheets: number,
  measure: TextMeasure,
) {
  const { job } = worked;
  return frameAndTitleBlock(
    {
      ...fieldsOfJob(job),
      format: 'A4',
      landscape: false,
      title,
      documentType: 'Holding checks',
      scale: null,
      sheet,
      sheets,
      notes: [
        'Calculated, not tested: no page of this takes the place of a test on the wall as built.',
        'Local codes, and whoever is licensed to answer for fixings, go before it.',
      ],
      cautions: holdingCautions.map(({ text }) => sentenceOnPaper(text, job.units)),
    },
    measure,
  );
}

function pagesOfWall(worked: WorkedOut, wall: WorkedWall, measure: TextMeasure): Draft[] {
  const { job } = worked;
  if (!wall.survey.wall.hung?.length) return [];
  const on = wallOfItems(job, wall.survey.wall, wall.zones);
  return judgeHung(on)
    .map(checkJudged)
    .flatMap((check) => {
      const title = capital(nameOfHung(check.item));
      const { space } = frame(worked, { title }, 1, 1, measure);
      const width = space.right - space.left;
      const blocks = blocksOf(worked, wall, on, check, width, measure);
      return dealOut(blocks, space.top - space.bottom).map((page) => ({ title, blocks: page }));
    });
}

export function stateOfCheck({ verdict }: Pick<HungCheck, 'verdict'>): ItemState {
  return verdict.isScrewed ? 'screwed to a fixing point' : verdict.verdict;
}

function blocksOf(
  worked: WorkedOut,
  wall: WorkedWall,
  on: WallOfItems,
  check: HungCheck,
  width: number,
  measure: TextMeasure,
): FlowBlock[] {
  const { units } = worked.job;
  const figures = paperFigures(units);
  const say = (text: string) => sentenceOnPaper(text, units);
  const list = (heading: string, sentences: readonly string[]) =>
    sentences.length === 0 ? [] : [headingBlock(heading, width), ...listBlocks(sentences, width, measure)];
  const { item, verdict, result } = check;
  const magnet = on.magnets.get(item.magnets?.magnet ?? '');
  const where = [
    `${capital(nameOfWall(wall.survey.wall))}: lower left corner ${figures.words(item.x)} from the datum and ${figures.words(item.y)} above it; ${figures.words(item.width)} wide, ${figures.words(item.height)} high.`,
    ...(verdict.zones.length > 0
      ? [
          `On zone ${verdict.zones.join(', ')}${verdict.panels.length > 0 ? `, ${verdict.panels.length > 1 ? 'panels' : 'panel'} ${verdict.panels.join(', ')}` : ''}.`,
        ]
      : []),
    ...(magnet ? [`${item.magnets!.places.length} × ${magnet.name}.`] : []),
  ];
  const advice = adviseHung(on, item.id).map((one) =>
    say(
      `${one.words} Then it ${one.isScrewed ? 'is ' : ''}${comma(ledToWords(one))}.${one.also ? ` ${one.also}` : ''}${one.at ? ` Done at ${one.at}.` : ''}`,
    ),
  );
  return [
    stateBlock(check, units, width, measure),
    hungSketch(wall, item, magnet?.diameter, figures.length, measure),
    ...where.map((text) => paragraphBlock(say(text), width, measure)),
    ...(check.largestWeight === undefined
      ? []
      : [
          paragraphBlock(
            `Largest safe weight of ${item.load ? 'what it carries' : 'the whole item'}: ${comma(largestWeightWords(check.largestWeight, units))}.`,
            width,
            measure,
            { weight: 'semi-bold' },
          ),
        ]),
    ...list(
      'Why',
      verdict.reasons.map((reason) => comma(say(reason))),
    ),
    ...modesTable(check, width, measure),
    ...list('What to change', advice),
    ...calculation(result?.lines ?? [], width, measure),
    ...list('Adhesive behind it', check.bonds.map(bondWords)),
    ...list(
      'Taken for granted',
      check.assumptions.map((assumption) => comma(say(assumption))),
    ),
  ];
}

function bondWords({ panel, items, result }: HungCheck['bonds'][number]): string {
  const used = (share: number | undefined) =>
    share === undefined ? 'strength not stated' : `${usedFigure(share)} used`;
  return `Panel ${panel}, which carries ${items.join(', ')}: ${result.verdict}. Shear: ${used(result.shearUtilisation)}; peel at its edge: ${used(result.peelUtilisation)}.`;
}

function stateBlock(
  check: HungCheck,
  units: WorkedOut['job']['units'],
  width: number,
  measure: TextMeasure,
): FlowBlock {
  const state = stateOfCheck(check);
  const { factor, asked, governs, isScrewed } = check.verdict;
  const figures =
    isScrewed || factor === undefined || asked === undefined
      ? ''
      : `: ${comma(timesFigure(factor))} times over, ${asked} asked for${governs ? `; ${modeWords[governs]} governs` : ''}`;
  const indent = 6;
  const words = paragraphBlock(
    sentenceOnPaper(`${capital(state)}${figures}`, units),
    width - indent,
    measure,
    {
      height: 3.5,
      weight: 'semi-bold',
      below: 3,
    },
  );
  return {
    height: words.height,
    at: (left, top) => [...stateMark(state, { x: left + 2, y: top - 1.8 }), ...words.at(left + indent, top)],
  };
}

function modesTable({ result }: HungCheck, width: number, measure: TextMeasure): FlowBlock[] {
  if (!result || result.modes.length === 0) return [];
  const columns: FlowColumn[] = [
    { heading: 'Way in which it may fail', align: 'left', width: width - 3 * 30 },
    { heading: 'holds, times', align: 'right', width: 30 },
    { heading: 'at worst', align: 'right', width: 30 },
    { heading: 'used', align: 'right', width: 30 },
  ];
  const rows = result.modes.map((mode): FlowRow => {
    const isWorst = mode.name === result.governs;
    return {
      kind: 'row',
      strong: isWorst,
      cells: [
        `${capital(modeWords[mode.name])}${isWorst ? ', governs' : ''}`,
        comma(timesFigure(mode.factor)),
        comma(timesFigure(mode.factorInWorstCase)),
        usedFigure(mode.utilisation),
      ],
    };
  });
  return table(columns, rows, measure);
}

/** Sources by number, as they come; in full under the table. */
function calculation(
  lines: NonNullable<HungCheck['result']>['lines'],
  width: number,
  measure: TextMeasure,
): FlowBlock[] {
  if (lines.length === 0) return [];
  const fixed = { symbol: 25, formula: 42, value: 18, unit: 13, source: 13 };
  const rest = Object.values(fixed).reduce((left, one) => left - one, width);
  const columns: FlowColumn[] = [
    { heading: 'Symbol', align: 'left', width: fixed.symbol },
    { heading: 'Calculation, in mm, N and T', align: 'left', width: rest },
    { heading: 'formula', align: 'left', width: fixed.formula },
    { heading: 'value', align: 'right', width: fixed.value },
    { heading: 'unit', align: 'left', width: fixed.unit },
    { heading: 'source', align: 'right', width: fixed.source },
  ];
  const sources = [...new Set(lines.map(({ source }) => source))];
  const rows = calculationParts.flatMap((part): FlowRow[] => {
    const own = lines.filter((line) => line.part === part);
    if (own.length === 0) return [];
    return [
      { kind: 'group', text: partWords[part] },
      ...own.map(({ symbol, words, formula = '', value, unit, source }): FlowRow => ({
        kind: 'row',
        cells: [
          symbol,
          comma(words),
          comma(formula),
          comma(calculationFigure(value)),
          unit,
          String(sources.indexOf(source) + 1),
        ],
      })),
    ];
  });
  return [
    ...table(columns, rows, measure),
    headingBlock('Sources', width),
    ...sources.map((source, i) => paragraphBlock(`${i + 1}  ${comma(source)}`, width, measure, { below: 0 })),
  ];
}

function table(columns: readonly FlowColumn[], rows: readonly FlowRow[], measure: TextMeasure): FlowBlock[] {
  return [
    { height: 3, at: () => [], keepWithNext: true },
    { ...layHeading(columns, measure), keepWithNext: true },
    ...layRows(columns, rows, measure),
  ];
}

/** With the comma of the drawing practice. */
function comma(figure: string): string {
  return figure.replace(/(?<=\d)\.(?=\d)/g, ',');
}
