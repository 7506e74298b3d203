import type { Mm } from '../../units';
import type { MmBox } from '../shape';

export type DifferenceKind = 'added' | 'removed' | 'moved' | 'changed';

export type DifferenceSubject =
  | 'job'
  | 'alternative'
  | 'stock'
  | 'product'
  | 'build-up'
  | 'rack'
  | 'wall'
  | 'opening'
  | 'fitting'
  | 'hung'
  | 'line'
  | 'fixing-point'
  | 'photo'
  | 'zone'
  | 'panels'
  | 'plan';

/** One thing in which a later job differs from an earlier one, in a sentence of its own. */
export interface Difference {
  readonly kind: DifferenceKind;
  readonly subject: DifferenceSubject;
  /** Id of the wall in the later job; of a wall that has gone, in the earlier one. */
  readonly wall?: string;
  readonly object?: string;
  readonly text: string;
  /** What to look at on the wall: where it is, or where it was. Wall frame. */
  readonly places: readonly MmBox[];
}

/** What happened to an object, without its name: `moved 120 mm right and 50 mm up`. */
export interface Says {
  readonly kind: 'moved' | 'changed';
  readonly says: string;
}

/** mm. Lengths that are no farther apart are the same: the step of the clipping kernel. */
export const sameLength: Mm = 0.01;
const dust = 1e-9;

export function isSameLength(a: Mm, b: Mm): boolean {
  return Math.abs(a - b) <= sameLength + dust;
}

/** Whether two values of a file are the same; numbers within a tolerance, a field that is missing like one without a value. */
export function isSame(a: unknown, b: unknown, tolerance = dust): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= tolerance + dust;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (a === b) return true;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [one, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  if (Array.isArray(a) && a.length !== (b as unknown[]).length) return false;
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) =>
    isSame(one[key], other[key], tolerance),
  );
}

/** A length or other figure, at most two places: `1926.5`. */
export function figure(value: number): string {
  return String(Math.round(Number((value * 100).toFixed(6))) / 100 + 0);
}

/** `120 mm right and 50 mm up`; empty if neither is farther than what counts as the same. */
export function wayInWords(dx: Mm, dy: Mm): string {
  return joined([
    isSameLength(dx, 0) ? '' : `${figure(Math.abs(dx))} mm ${dx > 0 ? 'right' : 'left'}`,
    isSameLength(dy, 0) ? '' : `${figure(Math.abs(dy))} mm ${dy > 0 ? 'up' : 'down'}`,
  ]);
}

/** `a, b and c`; empty parts are left out. */
export function joined(parts: readonly string[]): string {
  const said = parts.filter(Boolean);
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)!}`;
}

/** `Socket K4 moved 120 mm right.`, but `Socket K4: clearance 10 mm instead of 5 mm.` */
export function told(name: string, says: string): string {
  return /^(moved|is|has|was|runs|meets|shows|no longer) /.test(says)
    ? `${name} ${says}.`
    : `${name}: ${says}.`;
}
