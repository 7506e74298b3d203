import { chosenFixingPoint } from '../job/chosen-fixing-point';
import type { OpenJob } from '../job/open-job.svelte';
import type { LeafName } from './leaves';

/** Keys of the command that goes to the row of what is chosen; a finger that rests on an object does the same. */
export const rowKeys = 'L R';

/** The part of the schedule that has a row for what is chosen; null if none has. */
export function leafFor(open: OpenJob): LeafName | null {
  const { selection, station, handChoice: choice, marking } = open;
  if (chosenFixingPoint(open)) return 'Fixing points';
  if (!selection) return null;
  if (station === 'survey') {
    if (selection.kind === 'vertex') return 'Corners';
    return selection.kind === 'zone' ? null : 'Openings and fittings';
  }
  if (station === 'zones') {
    if (selection.kind !== 'zone') return null;
    return marking?.zone === selection.id ? 'Markings' : 'Zones';
  }
  if (station === 'hanging') return selection.kind === 'hung' ? 'Hung items' : null;
  if (station === 'panels' && selection.kind === 'zone' && selection.id === choice?.zone) return 'By hand';
  if (station === 'panels') return selection.kind === 'panel' ? 'Panels' : null;
  return null;
}

/** The focus goes to the chosen row: to its mark, or else to its first field. */
export function focusChosenRow(leaf: ParentNode | null): void {
  const row = leaf?.querySelector<HTMLElement>('tr[aria-current="true"]');
  row?.querySelector<HTMLElement>('button.row, input, select, button')?.focus();
}
