import { calculationParts, type CalculationLine } from '../holding/calculation';
import { calculationFigure, partWords } from '../holding/calculation-words';
import type { PanelBond } from '../holding/panel-bond';
import type { Mm } from '../units';
import { calculationRow, figuresRow, partRow } from './calculation-rows';
import { paragraphBlock, rule } from './client-blocks';
import { dealColumns, type ColumnTable } from './deal-columns';
import { heightOf, stack, type FlowBlock } from './flow-table';
import { comma } from './holding-words';
import type { TextMeasure } from './page';
import type { OwnCalculation, SharedCalculations, SharedPull } from './shared-calculations';
import { fitText } from './text';

const betweenColumns: Mm = 6;
const intro =
  'The calculation in full, line by line: lengths in mm, forces in N, remanence in T; μ₀ = 4π · 10⁻⁷ T·m/A; figures in brackets: sources, at the end. A pull P is worked out once for all items that have that magnet on that ground.';

/** Panels of one wall, and what their adhesive is asked to bear. */
export interface BondsOfWall {
  readonly wall: string;
  readonly bonds: readonly PanelBond[];
}

/**
 * Every line of the calculations in two columns, and where on which page each item's begins.
 *
 * @param room height of a page
 */
export function holdingAppendix(
  shared: SharedCalculations,
  bonds: readonly BondsOfWall[],
  width: Mm,
  room: Mm,
  measure: TextMeasure,
): FlowBlock[][] {
  const { pulls, own, sources } = shared;
  const column = (width - betweenColumns) / 2;
  const tables = [
    ...pulls.map((pull) => pullTable(pull, sources, column, measure)),
    ...own.map((one) => ownTable(one, sources, column, measure)),
    ...bonds.flatMap((wall) => bondTables(wall, sources, column, measure)),
    sourcesTable(sources, column, measure),
  ];
  if (sources.length === 0) return [];
  const top = paragraphBlock(intro, width, measure, { below: 3 });
  const columns = dealColumns(tables, (i) => (i < 2 ? room - top.height : room));
  const pages: FlowBlock[][] = [];
  for (let i = 0; i < columns.length; i += 2) {
    const pair = sideBySide(columns[i]!, columns[i + 1] ?? [], column);
    pages.push(i === 0 ? [top, pair] : [pair]);
  }
  return pages;
}

function sideBySide(left: readonly FlowBlock[], right: readonly FlowBlock[], column: Mm): FlowBlock {
  return {
    height: Math.max(heightOf(left), heightOf(right)),
    at: (x, top) => [...stack(left, x, top), ...stack(right, x + column + betweenColumns, top)],
  };
}

function pullTable(
  { name, lines, usedBy }: SharedPull,
  sources: readonly string[],
  width: Mm,
  measure: TextMeasure,
): ColumnTable {
  return {
    head: tableHead(`Pull ${name}`, `used by ${usedBy.join(', ')}`, width, measure),
    rows: rowsByPart(lines, sources, width, measure),
  };
}

function ownTable(
  { marks, pulls, lines }: OwnCalculation,
  sources: readonly string[],
  width: Mm,
  measure: TextMeasure,
): ColumnTable {
  const isShort = marks.length <= 3;
  const title = isShort ? marks.join(', ') : `${marks[0]} and ${marks.length - 1} alike`;
  const aside = [
    ...(pulls.length > 0 ? [`with pull ${pulls.map(({ name }) => name).join(' and ')}`] : []),
    ...(isShort ? [] : [marks.join(', ')]),
  ].join(': ');
  return {
    head: tableHead(title, aside, width, measure),
    rows: rowsByPart(lines, sources, width, measure),
  };
}

function rowsByPart(
  lines: readonly CalculationLine[],
  sources: readonly string[],
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  return calculationParts.flatMap((part) => {
    const own = lines.filter((line) => line.part === part);
    if (own.length === 0) return [];
    return [
      partRow(partWords[part], width),
      ...own.map((line) => calculationRow(line, width, { height: 1.8, sources }, measure)),
    ];
  });
}

/**
 * Panels of one zone share their build-up: what is the same of all is said once, the rest in columns, panel by panel.
 */
function bondTables(
  { wall, bonds }: BondsOfWall,
  sources: readonly string[],
  width: Mm,
  measure: TextMeasure,
): ColumnTable[] {
  const zones = new Set(bonds.map(({ face }) => face.zone.area.zone.id));
  return [...zones].flatMap((zone): ColumnTable[] => {
    const own = bonds.filter(
      ({ face, result }) => face.zone.area.zone.id === zone && result.lines.length > 0,
    );
    const lines = distinctBySymbol(own.flatMap(({ result }) => result.lines));
    const valueIn = (bond: PanelBond, symbol: string) =>
      bond.result.lines.find((line) => line.symbol === symbol)?.value;
    const isShared = ({ symbol, value }: CalculationLine) =>
      own.every((bond) => valueIn(bond, symbol) === value);
    const varying = lines.filter((line) => !isShared(line));
    return [
      {
        head: tableHead('Adhesive behind the steel', `wall ${wall}, zone ${zone}`, width, measure),
        rows: [
          ...lines.map((line) =>
            calculationRow(
              line,
              width,
              { height: 1.8, sources, ...(!isShared(line) && { valueText: 'below' }) },
              measure,
            ),
          ),
          ...(varying.length === 0
            ? []
            : [
                figuresRow(['Panel', ...varying.map(({ symbol }) => symbol)], width, 'heading'),
                ...own.map((bond) =>
                  figuresRow(
                    [
                      bond.panel,
                      ...varying.map(({ symbol }) => {
                        const value = valueIn(bond, symbol);
                        return value === undefined ? '–' : comma(calculationFigure(value));
                      }),
                    ],
                    width,
                    'row',
                  ),
                ),
              ]),
        ],
      },
    ];
  });
}

function distinctBySymbol(lines: readonly CalculationLine[]): CalculationLine[] {
  return [...new Map(lines.map((line) => [line.symbol, line])).values()];
}

function sourcesTable(sources: readonly string[], width: Mm, measure: TextMeasure): ColumnTable {
  const indent: Mm = 7;
  return {
    head: tableHead('Sources', '', width, measure),
    rows: sources.map((source, i) => {
      const words = paragraphBlock(comma(source), width, measure, { indent, below: 0.4 });
      return {
        height: words.height,
        at: (left, top) => [
          { kind: 'text', text: `[${i + 1}]`, at: { x: left, y: top - 2.5 }, height: 2.5 },
          ...words.at(left, top),
        ],
      };
    }),
  };
}

function tableHead(
  title: string,
  aside: string,
  width: Mm,
  measure: TextMeasure,
): (isContinued: boolean) => FlowBlock {
  return (isContinued) => {
    const words = isContinued ? `${title} (continued)` : title;
    const titled = fitText(
      { kind: 'text', text: words, at: { x: 0, y: 0 }, height: 3.5, weight: 'semi-bold' },
      width,
      measure,
    );
    const besideTitle = measure(titled.text, titled.height, titled) + 4;
    const isBeside = aside !== '' && besideTitle + measure(aside, 2.5, { face: 'condensed' }) <= width;
    const under = aside !== '' && !isBeside ? paragraphBlock(aside, width, measure, { below: 0 }) : undefined;
    const height = 3.5 + 2 + (under?.height ?? 0) + (under ? 1 : 0);
    return {
      height,
      keepWithNext: true,
      at: (left, top) => [
        { ...titled, at: { x: left, y: top - 3.5 } },
        ...(isBeside
          ? [
              {
                kind: 'text' as const,
                text: aside,
                at: { x: left + width, y: top - 3.5 },
                height: 2.5 as const,
                face: 'condensed' as const,
                anchor: 'end' as const,
                colour: 'soft' as const,
              },
            ]
          : []),
        ...(under ? under.at(left, top - 3.5 - 2) : []),
        rule(left, width, top - height, 0.35, 'ink'),
      ],
    };
  };
}
