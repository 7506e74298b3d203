import type { PanelBond } from '../holding/panel-bond';
import type { Mm } from '../units';
import { calculationMatrix, columnsBeside, wordsRow, type CalculationColumn } from './calculation-matrix';
import { dealColumns, type ColumnTable } from './deal-columns';
import type { FlowBlock } from './flow-table';
import { smallHeading, tightParagraph } from './holding-lists';
import { comma } from './holding-words';
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
    ...groupsOf(pulls, beside).map((some) => matrix('Pull of a magnet', some, [])),
    ...groupsOf(own, beside).map((some) => itemsMatrix(some, matrix)),
    ...bondMatrices(bonds, beside, matrix),
    sourcesTable(sources, width, measure),
  ];
  const first: ColumnTable = {
    head: () => smallHeading('The calculation in full'),
    rows: [wordsRow([intro, ...alikeWords(own, bonds)].join(' '), width, measure)],
  };
  return dealColumns([first, ...tables], () => room);
}

type ColumnNotes = Parameters<typeof calculationMatrix>[2];
type LayMatrix = (title: string, columns: readonly CalculationColumn[], notes: ColumnNotes) => ColumnTable;

/** What is alike is calculated once, under the first of its kind. */
function alikeWords(own: readonly OwnCalculation[], bonds: readonly PanelBond[]): string[] {
  const named = [
    ...own.map(({ marks }) => marks),
    ...panelsAlike(bonds).map((alike) => alike.map(({ panel }) => panel)),
  ];
  const said = named.flatMap(([first, ...others]) =>
    others.length === 0 ? [] : [`${first} also for ${others.join(', ')}`],
  );
  return said.length === 0 ? [] : [`What is alike is calculated once: ${said.join('; ')}.`];
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
  const columns = panelsAlike(bonds).map(([{ panel, result }]) => ({ name: panel, lines: result.lines }));
  return groupsOf(columns, beside).map((some) => matrix('Adhesive of panels', some, []));
}

/** Panels with the same figures, by the first of them. */
function panelsAlike(bonds: readonly PanelBond[]): (readonly [PanelBond, ...PanelBond[]])[] {
  const alike = new Map<string, [PanelBond, ...PanelBond[]]>();
  for (const bond of bonds) {
    if (bond.result.lines.length === 0) continue;
    const key = JSON.stringify(bond.result.lines);
    const others = alike.get(key);
    if (others) others.push(bond);
    else alike.set(key, [bond]);
  }
  return [...alike.values()];
}

/** By number, as many on a line as stand there whole; one that is longer than a line wraps. */
function sourcesTable(sources: readonly string[], width: Mm, measure: TextMeasure): ColumnTable {
  const gap: Mm = 5;
  const notes = sources.map((source, i) => {
    const words = `[${i + 1}] ${comma(source)}`;
    return { words, width: Math.min(width, measure(words, 2.5, { face: 'condensed' }) + 0.01) };
  });
  const lines: (typeof notes)[] = [];
  for (const note of notes) {
    const line = lines.at(-1);
    const used = (line ?? []).reduce((sum, one) => sum + one.width + gap, 0);
    if (line && used + note.width <= width) line.push(note);
    else lines.push([note]);
  }
  return {
    head: (isContinued) => smallHeading(isContinued ? 'Sources (continued)' : 'Sources'),
    rows: lines.map((line) => {
      const blocks = line.map((note) => tightParagraph(note.words, note.width, measure));
      return {
        height: Math.max(...blocks.map(({ height }) => height)),
        at: (left, top) => {
          let x = left;
          return blocks.flatMap((block, i) => {
            const items = block.at(x, top);
            x += line[i]!.width + gap;
            return items;
          });
        },
      };
    }),
  };
}

function groupsOf<T>(all: readonly T[], most: number): T[][] {
  const groups: T[][] = [];
  for (let i = 0; i < all.length; i += most) groups.push(all.slice(i, i + most));
  return groups;
}
