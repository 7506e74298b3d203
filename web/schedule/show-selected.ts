/**
 * Keeps the selected row of a table in view: to be called with whatever the selection depends on. Rows that
 * hold the focus are in view already.
 */
export function showSelectedRow(table: HTMLElement | undefined): void {
  const row = table?.querySelector<HTMLElement>('tr[aria-current="true"]');
  if (row && !row.contains(document.activeElement)) row.scrollIntoView({ block: 'nearest' });
}
