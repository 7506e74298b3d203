/** A row in the hand: where it was and where it would come to lie, from 0. */
export interface RowPlace {
  readonly from: number;
  readonly to: number;
}

/**
 * Lets a row of a table be dragged by an element in it, with mouse, pen or finger. Nothing changes before it is let go;
 * Escape, or a pointer that is taken away, leaves the row where it was.
 *
 * @param show where it would come to lie; undefined: it is no longer held
 */
export function rowGrip(
  from: number,
  { show, drop }: { show: (place: RowPlace | undefined) => void; drop: (to: number) => void },
): (grip: HTMLElement) => () => void {
  return (grip) => {
    let held: { readonly pointer: number; to: number } | undefined;

    const letGo = () => {
      held = undefined;
      show(undefined);
      removeEventListener('keydown', onkeydown, { capture: true });
    };
    const onkeydown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      letGo();
    };
    const ondown = (event: PointerEvent) => {
      if (held || !event.isPrimary || event.button !== 0) return;
      event.preventDefault();
      grip.setPointerCapture(event.pointerId);
      held = { pointer: event.pointerId, to: from };
      show({ from, to: from });
      addEventListener('keydown', onkeydown, { capture: true });
    };
    const onmove = (event: PointerEvent) => {
      if (held?.pointer !== event.pointerId) return;
      const rows = rowsBeside(grip);
      const to = rows.filter((row, i) => i !== from && middleOf(row) < event.clientY).length;
      if (to === held.to) return;
      held.to = to;
      rows[to]?.scrollIntoView({ block: 'nearest' });
      show({ from, to });
    };
    const onup = (event: PointerEvent) => {
      if (held?.pointer !== event.pointerId) return;
      const { to } = held;
      letGo();
      drop(to);
    };
    const oncancel = (event: PointerEvent) => {
      if (held?.pointer === event.pointerId) letGo();
    };

    const listeners = [
      ['pointerdown', ondown],
      ['pointermove', onmove],
      ['pointerup', onup],
      ['pointercancel', oncancel],
      ['lostpointercapture', oncancel],
    ] as const;
    for (const [name, listener] of listeners) grip.addEventListener(name, listener);
    return () => {
      if (held) letGo();
      for (const [name, listener] of listeners) grip.removeEventListener(name, listener);
    };
  };
}

function rowsBeside(grip: HTMLElement): HTMLTableRowElement[] {
  return [...(grip.closest('tbody')?.rows ?? [])];
}

function middleOf(row: HTMLElement): number {
  const { top, height } = row.getBoundingClientRect();
  return top + height / 2;
}
