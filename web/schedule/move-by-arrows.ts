const inCell = 'input, select, button';

/**
 * Arrow keys, Home and End between the cells of a table. While someone is typing, left and right belong to the
 * text; a choice keeps up and down, which change it.
 */
export function moveByArrows(table: HTMLTableElement): () => void {
  const follow = (event: KeyboardEvent) => moveInTable(event, table);
  table.addEventListener('keydown', follow);
  return () => table.removeEventListener('keydown', follow);
}

function moveInTable(event: KeyboardEvent, table: HTMLTableElement): void {
  const target = event.target as HTMLElement;
  const cell = target.closest<HTMLTableCellElement>('td, th');
  const row = cell?.closest('tr');
  if (!cell || !row || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  const step = steps[event.key];
  if (!step || belongsToField(event.key, target)) return;
  const next = step.rows
    ? inNextRow(table, row, cell, target, step.rows)
    : inSameRow(row, target, step.along!);
  if (!next) return;
  event.preventDefault();
  next.focus();
  next.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

type Along = 'before' | 'after' | 'first' | 'last';

const steps: Readonly<Record<string, { rows?: -1 | 1; along?: Along }>> = {
  ArrowUp: { rows: -1 },
  ArrowDown: { rows: 1 },
  ArrowLeft: { along: 'before' },
  ArrowRight: { along: 'after' },
  Home: { along: 'first' },
  End: { along: 'last' },
};

function belongsToField(key: string, target: HTMLElement): boolean {
  const upOrDown = key === 'ArrowUp' || key === 'ArrowDown';
  if (target instanceof HTMLSelectElement) return upOrDown;
  if (target instanceof HTMLInputElement && target.type !== 'checkbox') {
    return !upOrDown && target.dataset.settled !== 'true';
  }
  return false;
}

function inSameRow(row: HTMLTableRowElement, target: HTMLElement, along: Along): HTMLElement | undefined {
  const stops = [...row.querySelectorAll<HTMLElement>(inCell)].filter(isReachable);
  if (along === 'first') return stops[0];
  if (along === 'last') return stops.at(-1);
  return stops[stops.indexOf(target) + (along === 'before' ? -1 : 1)];
}

function inNextRow(
  table: HTMLTableElement,
  row: HTMLTableRowElement,
  cell: HTMLTableCellElement,
  target: HTMLElement,
  by: -1 | 1,
): HTMLElement | undefined {
  const rows = [...table.tBodies].flatMap((body) => [...body.rows]);
  for (let i = rows.indexOf(row) + by; rows[i]; i += by) {
    const beside = rows[i]!.cells[cell.cellIndex];
    // A tick box beside another, not the mark that stands before it in the same cell.
    const type = target.getAttribute('type');
    const stops = [...(beside?.querySelectorAll<HTMLElement>(inCell) ?? [])].filter(isReachable);
    const stop = stops.find((other) => other.getAttribute('type') === type) ?? stops[0];
    const first = stop ?? [...rows[i]!.querySelectorAll<HTMLElement>(inCell)].find(isReachable);
    if (first) return first;
  }
  return undefined;
}

function isReachable(element: HTMLElement): boolean {
  return !(element as HTMLButtonElement).disabled && element.offsetParent !== null;
}
