import type { HandChoice, HandPlace, HandPoint } from '../../core/job/schema';
import type { MmBox } from '../../core/job/shape';
import type { ZoneLayout } from '../../core/panels/panel';

/** A place of a choice by hand as a row shows it, and what another place there changes. */
export interface RowPlace {
  readonly said: string;
  readonly axis: 'x' | 'y';
  readonly place: HandPlace;
  readonly patch: (to: HandPlace) => Partial<HandChoice>;
}

export function placesOf(choice: HandChoice): readonly RowPlace[] {
  const { at, with: beside } = choice;
  const pair = (field: 'at' | 'with', point: HandPoint, words: readonly [string, string]): RowPlace[] => [
    { said: words[0], axis: 'x', place: point.x, patch: (x) => ({ [field]: { ...point, x } }) },
    { said: words[1], axis: 'y', place: point.y, patch: (y) => ({ [field]: { ...point, y } }) },
  ];
  const sides = (['left', 'right', 'bottom', 'top'] as const).flatMap((side): RowPlace[] => {
    const place = choice[side];
    if (place === undefined) return [];
    const axis = side === 'left' || side === 'right' ? 'x' : 'y';
    return [{ said: sideWords[side], axis, place, patch: (to) => ({ [side]: to }) }];
  });
  return [
    ...(at ? pair('at', at, ['from left', 'from floor']) : []),
    ...(beside ? pair('with', beside, ['with, from left', 'with, from floor']) : []),
    ...sides,
  ];
}

const sideWords = { left: 'left', right: 'right', bottom: 'below', top: 'above' } as const;

export const reachChoices = [
  { value: 'rectangle', label: 'rectangle' },
  { value: 'upright', label: 'upright strip' },
  { value: 'level', label: 'level strip' },
] as const;

export type BandReach = (typeof reachChoices)[number]['value'];

export function bandReach({ left, bottom }: HandChoice): BandReach {
  if (left !== undefined && bottom !== undefined) return 'rectangle';
  return left !== undefined ? 'upright' : 'level';
}

/** Sides that the reach has not are let go; those that it lacks begin in the middle of the zone. */
export function withReach(choice: HandChoice, reach: BandReach, zone: MmBox): Partial<HandChoice> {
  const usual = middleThird(zone);
  const across = reach === 'level' ? undefined : true;
  const up = reach === 'upright' ? undefined : true;
  return {
    left: across && (choice.left ?? usual.left),
    right: across && (choice.right ?? usual.right),
    bottom: up && (choice.bottom ?? usual.bottom),
    top: up && (choice.top ?? usual.top),
  };
}

export type NewHandKind = 'joint-on-line' | 'no-joints' | 'whole-panel' | 'no-panel' | 'split';

/** A choice as it is put in by its row: in the middle of the zone, to be typed from there. */
export function newHandChoice(kind: NewHandKind, zone: MmBox): Omit<HandChoice, 'id'> {
  const at = { x: Math.round(zone.x + zone.width / 2), y: Math.round(zone.y + zone.height / 2) };
  if (kind === 'no-joints') return { kind, ...middleThird(zone) };
  return {
    kind,
    ...((kind === 'joint-on-line' || kind === 'split') && { direction: 'upright' as const }),
    at,
  };
}

function middleThird({ x, y, width, height }: MmBox) {
  return {
    left: Math.round(x + width / 3),
    right: Math.round(x + (2 * width) / 3),
    bottom: Math.round(y + height / 3),
    top: Math.round(y + (2 * height) / 3),
  };
}

/** What has become of a choice, in words; three dots while it is worked out. */
export function handState(layout: ZoneLayout | null | undefined, id: string): string {
  const outcome = layout?.byHand?.find(({ wish }) => wish.id === id);
  if (!outcome) return '…';
  return outcome.state === 'met' ? 'as chosen' : outcome.why;
}
