import type { Finding } from '../../finding';
import type { HandOutcome } from './hand-outcomes';
import type { HandWish } from './hand-wishes';

/** Choices by hand that could not be met, that have lost their place, or that are not known here. */
export function handFindings(wallId: string, zoneId: string, outcomes: readonly HandOutcome[]): Finding[] {
  return outcomes.flatMap(({ wish, state, code, why }): Finding[] => {
    if (state === 'met') return [];
    const name = handName(wish);
    return [
      {
        level: state === 'unknown' ? 'note' : 'warning',
        code,
        wall: wallId,
        object: zoneId,
        text: `${name.charAt(0).toUpperCase()}${name.slice(1)} of zone ${zoneId} ${why}.`,
      },
    ];
  });
}

/** "joint on a line H1", as findings and lists say it. */
export function handName(wish: HandWish): string {
  const kind = wish.kind === 'lost' || wish.kind === 'unknown' ? wish.of : wish.kind;
  return `${kindNames[kind] ?? `choice “${kind.slice(0, 40)}”`} ${wish.id}`;
}

const kindNames: Readonly<Record<string, string>> = {
  'joint-on-line': 'joint on a line',
  'no-joints': 'band without joints',
  'whole-panel': 'whole panel',
  split: 'split',
  join: 'join',
  'no-panel': 'no panel',
  'other-stock': 'panel from other stock',
};
