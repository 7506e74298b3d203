import type { ComparedAlternatives } from '../offer/alternatives';
import type { Mm } from '../units';
import { listBlocks, paragraphBlock, spaceBlock } from './client-blocks';
import { layHeading, layRows, type FlowBlock, type FlowColumn } from './flow-table';
import type { TextMeasure } from './page';

/** At most so many columns side by side; more go under each other. */
const mostBeside = 3;

/** Alternatives side by side, what differs, and what each of their build-ups does and does not. */
export function comparedBlocks(compared: ComparedAlternatives, width: Mm, measure: TextMeasure): FlowBlock[] {
  const { titles, uses, differences } = compared;
  const words = titles.flatMap((title, i) => [
    paragraphBlock(title, width, measure, { weight: 'semi-bold', below: 0.4, keepWithNext: true }),
    ...uses[i]!.map(({ label, words: { does, doesNot } }) =>
      paragraphBlock(`${label}. ${[...does, ...doesNot].join(' ')}`, width, measure, { indent: 5 }),
    ),
  ]);
  return [
    ...figureBlocks(compared, width, measure),
    ...listBlocks(differences, width, measure),
    spaceBlock(2),
    ...words,
  ];
}

/** Their figures alone, at most so many alternatives beside each other. */
export function figureBlocks(
  { titles, rows }: ComparedAlternatives,
  width: Mm,
  measure: TextMeasure,
  most = mostBeside,
): FlowBlock[] {
  const places = titles.map((_, i) => i);
  const parts = Array.from({ length: Math.ceil(places.length / most) }, (_, p) =>
    places.slice(p * most, (p + 1) * most),
  );
  return parts.flatMap((part) => {
    const label = 42;
    const columns: FlowColumn[] = [
      { heading: '', align: 'left', width: label },
      ...part.map((i) => ({
        heading: titles[i]!,
        align: 'left' as const,
        width: (width - label) / part.length,
      })),
    ];
    const laid = layRows(
      columns,
      rows.map((row) => ({
        kind: 'row',
        cells: [row.label, ...part.map((i) => row.values[i]!)],
        strong: row.differs,
      })),
      measure,
    );
    const chained = laid.map((block, i) => (i < laid.length - 1 ? { ...block, keepWithNext: true } : block));
    return [{ ...layHeading(columns, measure), keepWithNext: true }, ...chained, spaceBlock(3)];
  });
}
