import { allObjects, sameObject } from '../../core/job/several';
import type { ObjectRef } from '../../core/job/shape';
import { firstFirst } from '../arrange/choose-alike';
import type { OpenJob } from '../job/open-job.svelte';

/** True while the focus goes to a row that is added to what is chosen, as it would else be chosen alone. */
let isAdding = false;

/**
 * What the row of an object listens to, and how it shows that it is chosen. A click or the focus chooses it alone, a
 * click with Ctrl adds it or takes it away, one with Shift adds all rows up to it, and so do Shift and the arrow keys.
 */
export function rowOf(open: OpenJob, ref: ObjectRef) {
  const { chosen } = open;
  return {
    'aria-current': sameObject(chosen.refs[0] ?? null, ref) ? ('true' as const) : undefined,
    'data-chosen': chosen.has(ref) ? '' : undefined,
    onmousedown(event: MouseEvent) {
      // The focus would choose the row alone before the click is heard, and Shift would mark text.
      if (adds(event) && !isCheckbox(event.target)) event.preventDefault();
    },
    onfocusin(event: FocusEvent) {
      if (!isAdding && !chosen.adding && !isCheckbox(event.target)) choose(open, ref);
    },
    onclick(event: MouseEvent) {
      if (isCheckbox(event.target)) return;
      if (event.shiftKey) chosen.add(upTo(open, ref));
      else if (adds(event) || chosen.adding) chosen.toggle(ref);
      else if (!isInField(event.target)) chosen.set([ref]);
    },
    onkeydown(event: KeyboardEvent) {
      const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
      if (!event.shiftKey || by === 0 || isInField(event.target)) return;
      event.preventDefault();
      addNeighbour(open, ref, by, event.currentTarget as HTMLElement);
    },
  };
}

/** Chooses a row whose field gets the focus; of several chosen ones it becomes the first, and all stay chosen. */
function choose({ chosen }: OpenJob, ref: ObjectRef): void {
  chosen.set(chosen.has(ref) ? firstFirst(ref, chosen.refs) : [ref]);
}

function addNeighbour(open: OpenJob, ref: ObjectRef, by: 1 | -1, row: HTMLElement): void {
  const inOrder = allObjects(open.wall!);
  const next = inOrder[inOrder.findIndex((other) => sameObject(other, ref)) + by];
  const rows = [...(row.closest('table')?.querySelectorAll<HTMLElement>('tr[data-ref]') ?? [])];
  const neighbour = next && rows.find(({ dataset }) => dataset.ref === refText(next));
  if (!next || !neighbour) return;
  const { chosen } = open;
  isAdding = true;
  neighbour.querySelector<HTMLElement>('button.row')?.focus();
  isAdding = false;
  // Going back over rows takes them away again.
  if (chosen.has(next) && chosen.has(ref)) chosen.toggle(ref);
  else chosen.add([ref, next]);
}

function upTo({ wall, chosen }: OpenJob, ref: ObjectRef): ObjectRef[] {
  const inOrder = wall ? allObjects(wall) : [];
  const from = inOrder.findIndex((other) => sameObject(other, chosen.refs[0] ?? ref));
  const to = inOrder.findIndex((other) => sameObject(other, ref));
  return inOrder
    .slice(Math.min(from, to), Math.max(from, to) + 1)
    .filter(({ kind }) => kind === ref.kind || ref.kind !== 'zone');
}

export function refText({ kind, id }: ObjectRef): string {
  return `${kind} ${id}`;
}

function adds({ ctrlKey, metaKey, shiftKey }: MouseEvent): boolean {
  return ctrlKey || metaKey || shiftKey;
}

function isCheckbox(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('.row-check') !== null;
}

function isInField(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input, select');
}
