import { tick } from 'svelte';

const inCell = 'input, select, button';

/**
 * Whoever deletes a row by keyboard goes on at the row that takes its place, else at the last one, else at the
 * schedule itself: the focus is never lost to the top of the page.
 */
export function holdFocus(table: HTMLTableElement): () => void {
  const follow = (event: MouseEvent) => void afterClick(event, table);
  table.addEventListener('click', follow, { capture: true });
  return () => table.removeEventListener('click', follow, { capture: true });
}

async function afterClick(event: MouseEvent, table: HTMLTableElement): Promise<void> {
  const cell = event.target instanceof Element ? event.target.closest<HTMLTableCellElement>('td, th') : null;
  const row = cell?.closest('tr');
  if (event.detail !== 0 || !cell || !row) return;
  const place = row.sectionRowIndex;
  const column = cell.cellIndex;
  // A task later: the button's own listener has not even begun while this one, of the table, is heard.
  await new Promise((resume) => setTimeout(resume));
  await tick();
  if (row.isConnected || document.activeElement !== document.body) return;
  const rows = [...(table.tBodies[0]?.rows ?? [])];
  const next = rows[Math.min(place, rows.length - 1)];
  const stops = [...(next?.cells[column]?.querySelectorAll<HTMLButtonElement>(inCell) ?? [])];
  const stop = stops.findLast(({ disabled }) => !disabled) ?? next?.querySelector<HTMLElement>(inCell);
  (stop ?? document.getElementById('schedule'))?.focus();
}

/** Whoever puts in a row by keyboard goes on in its first field; a finger or mouse stays where it is. */
export async function goToNewRow(event: MouseEvent, table: HTMLTableElement | undefined): Promise<void> {
  if (event.detail !== 0 || !table) return;
  await tick();
  const selected = table.querySelector('tbody tr[aria-current="true"]');
  const row = selected ?? [...(table.tBodies[0]?.rows ?? [])].at(-1);
  // What has just been put in has its kind already.
  const field =
    row?.querySelector<HTMLElement>('input:not([type="checkbox"])') ?? row?.querySelector('select');
  field?.focus();
}
