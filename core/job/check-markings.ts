import type { Finding } from '../finding';
import { mostLines } from './limits';
import type { Marking } from './marking-schema';
import { sizeOfMarking, usualLineWidth } from './markings';
import { pathText, refusal, shown, type Path } from './place';
import type { Job } from './schema';
import { zoneListsOf } from './zone-lists';

/** Markings have what their kind asks for, ids of their own within the zone, and no more lines than can be told apart. */
export function checkMarkings(job: Job): Finding[] {
  return zoneListsOf(job).flatMap(({ zones, path }) =>
    zones.flatMap(({ markings = [] }, z) => {
      const first = new Map<string, Path>();
      return markings.flatMap((marking, m): Finding[] => {
        const at: Path = [...path, z, 'markings', m];
        const earlier = first.get(marking.id);
        if (earlier) {
          const says = `is ${shown(marking.id)}, which ${pathText([...earlier, 'id'])} has already; give one of them another id.`;
          return [refusal(job, [...at, 'id'], 'duplicate-id', says)];
        }
        first.set(marking.id, at);
        const fault = faultOf(marking);
        return fault ? [refusal(job, at, 'bad-marking', fault)] : [];
      });
    }),
  );
}

type Field = keyof Marking & string;

const needed: Readonly<Record<Marking['kind'], readonly Field[]>> = {
  'ruled-grid': ['width', 'height', 'spacingAcross', 'spacingUp'],
  'ruled-lines': ['width', 'height', 'spacingUp'],
  table: ['width', 'height', 'columns', 'rows'],
  board: ['across', 'up', 'side'],
  picture: ['width', 'height', 'photo'],
};

/** What is wrong with a marking by itself, in words; null if nothing is. */
function faultOf(marking: Marking): string | null {
  const missing = needed[marking.kind].find((field) => marking[field] === undefined);
  if (missing) return `is ${shown(marking.kind)} and has no "${missing}"; give one.`;
  return faultOfLines(marking) ?? (marking.kind === 'table' ? faultOfTable(marking) : null);
}

function faultOfLines(marking: Marking): string | null {
  const { kind, spacingAcross = 0, spacingUp = 0, side = 0, lineWidth = usualLineWidth } = marking;
  const { width, height } = sizeOfMarking(marking);
  const spacings: readonly (readonly [number, number])[] =
    kind === 'ruled-grid'
      ? [
          [width, spacingAcross],
          [height, spacingUp],
        ]
      : kind === 'ruled-lines'
        ? [[height, spacingUp]]
        : kind === 'board'
          ? [[width, side]]
          : [];
  for (const [length, spacing] of spacings) {
    if (lineWidth >= spacing)
      return `has lines ${lineWidth} mm wide every ${spacing} mm, which leave nothing between them; give thinner lines or a wider spacing.`;
    if (length / spacing > mostLines)
      return `would have more than ${mostLines} lines, ${spacing} mm apart over ${length} mm; give a wider spacing.`;
  }
  return null;
}

function faultOfTable(table: Marking): string | null {
  const { width = 0, height = 0, columns = [], rows = [], headingWidth = 0, headingHeight = 0 } = table;
  return (
    faultOfCells('column', 'wide', width, headingWidth, columns.length, table.columnWidths) ??
    faultOfCells('row', 'high', height, headingHeight, rows.length, table.rowHeights)
  );
}

function faultOfCells(
  cell: string,
  long: string,
  whole: number,
  heading: number,
  count: number,
  sizes: readonly number[] | undefined,
): string | null {
  if (whole - heading < count * 0.01)
    return `is ${whole} mm ${long} and its headings take ${heading} mm of that; leave room for the ${cell}s.`;
  if (!sizes) return null;
  if (sizes.length !== count)
    return `has ${count} ${cell}s, but sizes for ${sizes.length}; give one for each.`;
  const sum = Math.round((heading + sizes.reduce((total, size) => total + size, 0)) * 100) / 100;
  return Math.abs(sum - whole) > 0.011
    ? `is ${whole} mm ${long}, but its ${cell}s and headings add up to ${sum} mm; give sizes that add up.`
    : null;
}
