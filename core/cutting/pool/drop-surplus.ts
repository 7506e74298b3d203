import type { FilledPlace, FilledSheet } from '../fill-sheet';
import type { NestedSheet, NestTask } from '../nest';

/**
 * Takes off what is covered more often than wanted, from the emptiest sheets first; a sheet left empty goes
 * altogether.
 *
 * @param surplus how many of each kind are too many; all zero afterwards if it succeeds
 * @returns null if a panel too many holds others in its waste that are wanted
 */
export function dropSurplus(
  { kinds }: NestTask,
  sheets: readonly NestedSheet[],
  surplus: number[],
): NestedSheet[] | null {
  const byArea = [...sheets].sort((a, b) => a.filled.area - b.filled.area);
  const kept: NestedSheet[] = [];
  for (const sheet of byArea) {
    const { places, spaces } = sheet.filled;
    const gone = new Set<number>();
    const dependents = places.map(() => 0);
    for (const { space } of places) if (space > 0) dependents[spaces[space - 1]!.host]!++;
    // Hosts come before what lies in their waste, so that from the end a panel's own guests go first.
    for (let i = places.length - 1; i >= 0; i--) {
      const { kind, space } = places[i]!;
      if (surplus[kind]! <= 0 || dependents[i]! > 0) continue;
      gone.add(i);
      surplus[kind]!--;
      if (space > 0) dependents[spaces[space - 1]!.host]!--;
    }
    if (gone.size === 0) kept.push(sheet);
    else if (gone.size < places.length) {
      kept.push({ ...sheet, filled: without(sheet.filled, gone, (kind) => kinds[kind]!.area) });
    }
  }
  return surplus.some((count) => count > 0) ? null : kept;
}

function without(
  { places, spaces }: FilledSheet,
  gone: ReadonlySet<number>,
  areaOf: (kind: number) => number,
): FilledSheet {
  const newPlace: number[] = [];
  let next = 0;
  places.forEach((_, i) => (newPlace[i] = gone.has(i) ? -1 : next++));
  const newSpace: number[] = [0];
  const keptSpaces: { host: number; waste: number }[] = [];
  spaces.forEach(({ host, waste }, i) => {
    if (gone.has(host)) return;
    keptSpaces.push({ host: newPlace[host]!, waste });
    newSpace[i + 1] = keptSpaces.length;
  });
  const kept = places.flatMap((place, i): FilledPlace[] =>
    gone.has(i) ? [] : [{ ...place, space: newSpace[place.space]! }],
  );
  return { places: kept, spaces: keptSpaces, area: kept.reduce((sum, { kind }) => sum + areaOf(kind), 0) };
}
