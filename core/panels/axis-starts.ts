import type { Hundredth } from '../units';
import { modulo } from './grid';

/*
 * Along one axis, what a start does to the panels only changes at its events; between two of them every start
 * does the same. So the events and one start from every span between them are all that need comparing.
 */

/** An edge of the area across the axis. */
export interface CrossEdge {
  readonly at: Hundredth;
  /** Whether the area begins here (it lies on the side of rising coordinates) or ends. */
  readonly begins: boolean;
  /** Its length, by which edges are preferred where not all can be looked at. */
  readonly length: number;
  /** By how much cells that this edge can cut are shifted against the start; 0 without stagger. */
  readonly shift: Hundredth;
}

/** The cells along an axis: size, pitch and the least width asked for. */
export interface AxisPattern {
  readonly size: Hundredth;
  readonly pitch: Hundredth;
  readonly least: Hundredth;
}

/** A coordinate of the start, modulo the pitch. */
export interface AxisStart {
  readonly at: Hundredth;
  /** Length of the edges that meet a joint here; Infinity for starts that are always looked at. */
  readonly weight: number;
  /** On an event; else between two. */
  readonly isEvent: boolean;
}

/**
 * The events of an axis and the middles of the spans between them, ascending.
 *
 *              cell           An edge at which the area begins makes a panel appear or vanish where the
 *        ├─────────────┤      cell ends on it, a whole one where the cell begins on it, and a sliver or
 *            e ▒▒▒▒▒▒▒▒▒      none where the cell ends the least width beyond it.
 *
 * @param always coordinates to look at besides, such as symmetric ones
 * @param more events of another kind
 */
export function axisStarts(
  edges: readonly CrossEdge[],
  { size, pitch, least }: AxisPattern,
  always: readonly Hundredth[],
  more: readonly Hundredth[] = [],
): AxisStart[] {
  const weights = new Map<Hundredth, number>();
  const add = (at: Hundredth, weight: number) => {
    const rest = modulo(at, pitch);
    weights.set(rest, (weights.get(rest) ?? 0) + weight);
  };
  for (const { at, begins, length, shift } of edges) {
    add(at - shift, length);
    add(at - size - shift, length);
    if (least > 0 && least < size) add(begins ? at + least - size - shift : at - least - shift, length);
  }
  for (const at of more) add(at, 0);
  const events = [...weights.keys()].sort((a, b) => a - b);
  const isEvent = new Set(events);
  events.forEach((event, i) => {
    const next = i + 1 < events.length ? events[i + 1]! : events[0]! + pitch;
    if (next - event >= 2) add(event + Math.floor((next - event) / 2), 0);
  });
  for (const at of always) add(at, Infinity);
  return [...weights]
    .map(([at, weight]) => ({ at, weight, isEvent: isEvent.has(at) }))
    .sort((a, b) => a.at - b.at);
}
