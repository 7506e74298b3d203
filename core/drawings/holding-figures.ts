import type { CalculationLine } from '../holding/calculation';
import { calculationFigure, modeWords, timesFigure, usedFigure } from '../holding/calculation-words';
import type { HungCheck } from '../holding/check-hung';
import type { ModeName } from '../holding/rigid-item';
import { stackInFactor } from '../holding/safety';
import { sentence as capital } from '../job/names';
import { figure } from '../lengths';
import { toHundredth, type Mm } from '../units';
import type { FlowBlock } from './flow-table';
import { comma } from './holding-words';
import { smallHeading, tightParagraph, tightTable, type TightColumn, type TightRow } from './holding-lists';
import type { TextMeasure } from './page';
import type { PaperFigures } from './paper-figures';

/* The tables of an item's sheet: its magnets, the ways in which it may fail, and the lines that govern. */

/** Where each magnet sits and what it pulls there; [] for an item without magnets. */
export function magnetsTable(
  { item, result, placed }: HungCheck,
  figures: PaperFigures,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const places = item.magnets?.places ?? [];
  if (places.length === 0) return [];
  const { state } = result ?? {};
  // Feet and inches are longer, and a figure is never broken.
  const isLong = figures.units === 'ft-in';
  const columns = columnsOf([
    [isLong ? 'no' : 'no.', 'left', isLong ? 0.065 : 0.08],
    ['left', 'right', isLong ? 0.21 : 0.13],
    ['up', 'right', isLong ? 0.21 : 0.14],
    ['share', 'right', isLong ? 0.12 : 0.14],
    ['pull, N', 'right', isLong ? 0.12 : 0.15],
    ['at worst', 'right', isLong ? 0.135 : 0.17],
    ['load, N', 'right', isLong ? 0.14 : 0.19],
  ]);
  const rows = places.map(([x, y], i): TightRow => {
    const counted = result?.magnets[i];
    const isKnown = counted !== undefined && counted.pull.by !== 'nothing';
    const share = counted?.derating.share ?? 1;
    const pull = (force: number | undefined) =>
      isKnown && force !== undefined ? comma(calculationFigure(force * share)) : '–';
    return {
      cells: [
        String(i + 1),
        figures.length(toHundredth(x)),
        figures.length(toHundredth(y)),
        !isKnown ? '–' : state && !state.counted[i] ? 'absent' : `${Math.round(share * 100)} %`,
        pull(counted?.pull.nominal),
        pull(counted?.pull.least),
        state?.T[i] === undefined ? '–' : comma(calculationFigure(state.T[i])),
      ],
    };
  });
  const isHeld = placed.held !== undefined;
  return [
    smallHeading(isHeld ? 'Its magnets, with what each pulls at its place' : 'Its magnets'),
    ...tightTable(columns, rows, width, measure),
  ];
}

/** [] where nothing can be said. */
export function modesTable({ result }: HungCheck, width: Mm, measure: TextMeasure): FlowBlock[] {
  if (!result || result.modes.length === 0) return [];
  const { asked, governs } = result;
  const atWorst = comma(figure(asked * stackInFactor, 2));
  const columns = columnsOf([
    ['way in which it may fail', 'left', 0.49],
    ['times', 'right', 0.18],
    ['at worst', 'right', 0.19],
    ['used', 'right', 0.14],
  ]);
  const rows = result.modes.map((mode): TightRow => ({
    strong: mode.name === governs,
    cells: [
      `${capital(modeWords[mode.name])}${mode.name === governs ? ', governs' : ''}`,
      comma(timesFigure(mode.factor)),
      comma(timesFigure(mode.factorInWorstCase)),
      usedFigure(mode.utilisation),
    ],
  }));
  return [
    smallHeading('How many times over', {
      words: `asked: ${asked}; at worst ${atWorst}`,
      width,
      measure,
    }),
    ...tightTable(columns, rows, width, measure),
  ];
}

/** What the formula of each mode is made of, by its symbols. */
const behind: Readonly<Record<ModeName, readonly string[]>> = {
  slip: ['ΣF', 'Q', 'V'],
  turning: ['ΣF', 'V', 'Mz'],
  'pull-off': ['M', 'C'],
  tipping: ['ΣF', 'M'],
};

/** The lines of the calculation that the governing factor comes of. */
export function governingTable(
  { result }: HungCheck,
  /** Where the whole calculation stands. */
  inFull: string,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  if (!result?.governs) return [];
  const wanted = [...behind[result.governs], `S ${result.governs}`];
  const lines = wanted.flatMap(
    (symbol) => result.lines.find((line: CalculationLine) => line.symbol === symbol) ?? [],
  );
  return [
    smallHeading('What governs', { words: inFull, width, measure }),
    ...lines.map((line) => governingLine(line, width, measure)),
  ];
}

/** `Q  slip capacity = Σμ (F − T)   14,32 N` */
function governingLine(
  { symbol, words, formula, value, unit }: CalculationLine,
  width: Mm,
  measure: TextMeasure,
): FlowBlock {
  const start = Math.max(9, measure(symbol, 2.5, { face: 'condensed', weight: 'semi-bold' }) + 1.5);
  const figure = `${comma(calculationFigure(value))}${unit ? ` ${unit}` : ''}`;
  const room = width - start - measure(figure, 2.5, { face: 'condensed' }) - 2;
  const said = tightParagraph(comma(formula === undefined ? words : `${words} = ${formula}`), room, measure);
  return {
    height: said.height + 0.4,
    at: (left, top) => [
      {
        kind: 'text',
        text: symbol,
        at: { x: left, y: top - 2.5 },
        height: 2.5,
        face: 'condensed',
        weight: 'semi-bold',
      },
      ...said.at(left + start, top),
      {
        kind: 'text',
        text: figure,
        at: { x: left + width, y: top - said.height + 1.3 },
        height: 2.5,
        face: 'condensed',
        anchor: 'end',
      },
    ],
  };
}

function columnsOf(columns: readonly (readonly [string, TightColumn['align'], number])[]): TightColumn[] {
  return columns.map(([heading, align, share]) => ({ heading, align, share }));
}
