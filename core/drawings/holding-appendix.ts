import type { PanelBond } from '../holding/panel-bond';
import type { Mm } from '../units';
import { calculationMatrix, columnsBeside, wordsRow, type CalculationColumn } from './calculation-matrix';
import { dealColumns, type ColumnTable } from './deal-columns';
import type { FlowBlock } from './flow-table';
import { smallHeading, tightParagraph } from './holding-lists';
import type { TextMeasure } from './page';
import type { OwnCalculation, SharedCalculations } from './shared-calculations';

const intro =
  'Lengths in mm, forces in N, remanence in T; μ₀ = 4π · 10⁻⁷ T·m/A. Figures in brackets: sources, at the end. A pull P is worked out once for all items that have that magnet on that ground.';

/**
 * Every line of the calculations: pulls, items, adhesive, then the sources by number. Each page a list of blocks; [] where
 * nothing is calculated.
 *
 * @param room height of a page
 */
export function holdingAppendix(
  shared: SharedCalculations,
  bonds: readonly PanelBond[],
  width: Mm,
  room: Mm,
  measure: TextMeasure,
): FlowBlock[][] {
  const { pulls, own, sources } = shared;
  if (sources.length === 0) return [];
  const beside = columnsBeside(width);
  const matrix = (title: string, columns: readonly CalculationColumn[], notes: ColumnNotes) =>
    calculationMatrix(title, columns, notes, sources, width, measure);
  const tables = [
    ...groupsOf(pulls, beside).map((some) =>
      matrix('Pull of a magnet', some, [
        {
          symbol: '',
          words: 'used by',
          cells: some.map(({ usedBy }) => (usedBy.length > 2 ? `${usedBy[0]} …` : usedBy.join(' '))),
        },
      ]),
    ),
    ...groupsOf(own, beside).map((some) => itemsMatrix(some, matrix)),
    ...bondMatrices(bonds, beside, matrix),
    sourcesTable(sources, width, measure),
  ];
  const first: ColumnTable = {
    head: () => smallHeading('The calculation in full'),
    rows: [wordsRow(intro, width, measure), ...alikeRows(own, width, measure)],
  };
  return dealColumns([first, ...tables], () => room);
}

type ColumnNotes = Parameters<typeof calculationMatrix>[2];
type LayMatrix = (title: string, columns: readonly CalculationColumn[], notes: ColumnNotes) => ColumnTable;

/** Items alike are calculated once, under the first of them. */
function alikeRows(own: readonly OwnCalculation[], width: Mm, measure: TextMeasure): FlowBlock[] {
  return own
    .filter(({ marks }) => marks.length > 1)
    .map(({ marks: [first, ...others] }) =>
      wordsRow(`${first} is calculated for ${others.join(', ')} too, which are alike.`, width, measure),
    );
}

function itemsMatrix(some: readonly OwnCalculation[], matrix: LayMatrix): ColumnTable {
  return matrix(
    'Items',
    some.map(({ marks, lines }) => ({ name: marks[0]!, lines })),
    [
      {
        symbol: 'P',
        words: 'pull that it goes by',
        cells: some.map(({ pulls }) => pulls.map(({ name }) => name).join(' ')),
      },
    ],
  );
}

function bondMatrices(bonds: readonly PanelBond[], beside: number, matrix: LayMatrix): ColumnTable[] {
  const columns = bonds
    .filter(({ result }) => result.lines.length > 0)
    .map(({ panel, result }) => ({ name: panel, lines: result.lines }));
  return groupsOf(columns, beside).map((some) => matrix('Adhesive of panels', some, []));
}

function sourcesTable(sources: readonly string[], width: Mm, measure: TextMeasure): ColumnTable {
  const indent: Mm = 7;
  return {
    head: (isContinued) => smallHeading(isContinued ? 'Sources (continued)' : 'Sources'),
    rows: sources.map((source, i) => {
      const words = tightParagraph(source, width - indent, measure);
      return {
        height: words.height,
        at: (left, top) => [
          { kind: 'text', text: `[${i + 1}]`, at: { x: left, y: top - 2.5 }, height: 2.5, face: 'condensed' },
          ...words.at(left + indent, top),
        ],
      };
    }),
  };
}

function groupsOf<T>(all: readonly T[], most: number): T[][] {
  const groups: T[][] = [];
  for (let i = 0; i < all.length; i += most) groups.push(all.slice(i, i + most));
  return groups;
}
