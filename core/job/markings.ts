import type { Mm } from '../units';
import { changeWall, tidy } from './changes';
import { extentOf } from './extent';
import type { Marking } from './marking-schema';
import { findPhoto } from './photos';
import type { Job, Zone } from './schema';
import { findWall, type MmBox } from './shape';

/*
 * Markings of zones: their sizes and pure changes of them. A zone or an id that is not there leaves the job as it was; a
 * zone without markings has no list either.
 */

/** A marking, named by its zone and its own id. */
export interface MarkingRef {
  readonly zone: string;
  readonly marking: string;
}

export type MmSize = Readonly<Record<'width' | 'height', Mm>>;

export const usualLineWidth: Mm = 3;
export const usualLetterHeight: Mm = 40;

export function findMarking(job: Job, wallId: string, ref: MarkingRef): Marking | undefined {
  const zone = findWall(job, wallId)?.zones.find(({ id }) => id === ref.zone);
  return zone?.markings?.find(({ id }) => id === ref.marking);
}

/** How large a marking is; a board is as large as its squares. */
export function sizeOfMarking({
  kind,
  width = 0,
  height = 0,
  across = 1,
  up = 1,
  side = 0,
}: Marking): MmSize {
  return kind === 'board' ? { width: tidy(across * side), height: tidy(up * side) } : { width, height };
}

/** Where a marking of a zone lies, wall frame. */
export function boxOfMarking(zone: Zone, marking: Marking): MmBox {
  const { x, y } = extentOf(zone);
  return { x: tidy(x + marking.x), y: tidy(y + marking.y), ...sizeOfMarking(marking) };
}

/** Width over height where the one follows from the other; null where both are free. */
export function proportionOf(
  job: Job,
  { kind, across = 1, up = 1, photo, stretched }: Marking,
): number | null {
  if (kind === 'board') return across / up;
  if (kind !== 'picture' || stretched) return null;
  const own = photo === undefined ? undefined : findPhoto(job, photo);
  return own ? own.width / own.height : null;
}

export function addMarking(job: Job, wallId: string, zoneId: string, marking: Marking): Job {
  return changeMarkings(job, wallId, zoneId, (markings) => [...markings, marking]);
}

export function removeMarking(job: Job, wallId: string, { zone, marking }: MarkingRef): Job {
  return changeMarkings(job, wallId, zone, (markings) => markings.filter(({ id }) => id !== marking));
}

/** Fields of one marking replaced; a field set to undefined is taken out. */
export function changeMarking(
  job: Job,
  wallId: string,
  { zone, marking }: MarkingRef,
  change: (marking: Marking) => Partial<Marking>,
): Job {
  return changeMarkings(job, wallId, zone, (markings) =>
    markings.map((one) => (one.id === marking ? withoutUndefined({ ...one, ...change(one) }) : one)),
  );
}

export function moveMarking(job: Job, wallId: string, ref: MarkingRef, dx: Mm, dy: Mm): Job {
  if (dx === 0 && dy === 0) return job;
  return changeMarking(job, wallId, ref, ({ x, y }) => ({ x: tidy(x + dx), y: tidy(y + dy) }));
}

/**
 * A marking brought to a size: a board by the side of its squares, a picture in its proportions, a table with its own
 * columns and rows in theirs. Where only one of the two can be had, the one that is given or changes more counts.
 */
export function sizedMarking(job: Job, marking: Marking, to: Partial<MmSize>): Partial<Marking> {
  const from = sizeOfMarking(marking);
  const wanted = { ...from, ...to };
  const proportion = proportionOf(job, marking);
  if (proportion === null) return { ...tidySize(wanted), ...sizedCells(marking, wanted) };
  const byWidth =
    Math.abs(wanted.width / (from.width || 1) - 1) >= Math.abs(wanted.height / (from.height || 1) - 1);
  const width = byWidth ? wanted.width : wanted.height * proportion;
  return marking.kind === 'board'
    ? { side: tidy(width / (marking.across ?? 1)) }
    : tidySize({ width, height: width / proportion });
}

/**
 * A table changed by some of its fields: sizes that no longer go with the number of columns or rows become equal, and a
 * table whose columns or rows have sizes of their own is as large as these and its headings.
 */
export function changedTable(table: Marking, patch: Partial<Marking>): Partial<Marking> {
  const next = { ...table, ...patch } as Marking;
  const { columns = [], rows = [], headingWidth = 0, headingHeight = 0 } = next;
  const columnWidths = next.columnWidths?.length === columns.length ? next.columnWidths : undefined;
  const rowHeights = next.rowHeights?.length === rows.length ? next.rowHeights : undefined;
  return {
    ...patch,
    columnWidths,
    rowHeights,
    ...(columnWidths && { width: tidy(headingWidth + sumOf(columnWidths)) }),
    ...(rowHeights && { height: tidy(headingHeight + sumOf(rowHeights)) }),
  };
}

/** M1, M2, …: the lowest number that no marking of the zone has. */
export function freshMarkingId({ markings = [] }: Zone): string {
  const taken = new Set(markings.map(({ id }) => id));
  for (let n = 1; ; n++) if (!taken.has(`M${n}`)) return `M${n}`;
}

/** Lengths in the proportions of others that add up to `whole` exactly, in hundredths. */
export function sharedOut(parts: readonly Mm[], whole: Mm): Mm[] {
  const sum = sumOf(parts);
  let before = 0;
  let end = 0;
  return parts.map((part) => {
    before += part;
    const start = end;
    end = tidy((whole * before) / sum);
    return tidy(end - start);
  });
}

function sumOf(lengths: readonly Mm[]): Mm {
  return lengths.reduce((sum, length) => sum + length, 0);
}

function sizedCells(marking: Marking, { width, height }: MmSize): Partial<Marking> {
  const { kind, columnWidths, rowHeights, headingWidth = 0, headingHeight = 0 } = marking;
  if (kind !== 'table') return {};
  return {
    ...(columnWidths && { columnWidths: sharedOut(columnWidths, tidy(width) - headingWidth) }),
    ...(rowHeights && { rowHeights: sharedOut(rowHeights, tidy(height) - headingHeight) }),
  };
}

function tidySize({ width, height }: MmSize): MmSize {
  return { width: tidy(width), height: tidy(height) };
}

function changeMarkings(
  job: Job,
  wallId: string,
  zoneId: string,
  change: (markings: readonly Marking[]) => Marking[],
): Job {
  return changeWall(job, wallId, (wall) => {
    const zone = wall.zones.find(({ id }) => id === zoneId);
    if (!zone) return wall;
    const { markings = [], ...rest } = zone;
    const after = change(markings);
    if (after.length === markings.length && after.every((one, i) => one === markings[i])) return wall;
    const changed = (after.length > 0 ? { ...rest, markings: after } : rest) as Zone;
    return { ...wall, zones: wall.zones.map((one) => (one === zone ? changed : one)) };
  });
}

function withoutUndefined<T extends object>(object: T): T {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as T;
}
