import { countText } from '../../core/drawings/figure-text';
import type { Layout, Start } from '../../core/job/schema';
import type { StartCandidate, ZoneLayout } from '../../core/panels/panel';
import { formatHundredth } from '../../core/drawings/figures';

/** Every start by name, as one chooses it; 'picked' is a point of the wall. */
export const startChoices = [
  { value: 'best', label: 'Best of all starts' },
  { value: 'lower-left', label: 'Lower left corner' },
  { value: 'lower-right', label: 'Lower right corner' },
  { value: 'upper-left', label: 'Upper left corner' },
  { value: 'upper-right', label: 'Upper right corner' },
  { value: 'centre-on-joint', label: 'Joint on the middle' },
  { value: 'centre-on-panel', label: 'Panel on the middle' },
  { value: 'picked', label: 'Picked point' },
] as const;

export type StartChoice = (typeof startChoices)[number]['value'];

export function choiceOf(start: Start): StartChoice {
  return typeof start === 'string' ? start : 'picked';
}

/** The start that a choice means; a picked point begins where the panels start now. */
export function startOfChoice(choice: StartChoice, { start }: Pick<ZoneLayout, 'start'>): Layout['start'] {
  return choice === 'picked' ? { x: start.x / 100, y: start.y / 100 } : choice;
}

/** "7 stock sheets, 5 of 16 panels cut, no slivers, symmetrical" */
export function startInWords(candidate: StartCandidate): string {
  const { stockSheets, cutPanels, panels, slivers, asymmetry } = candidate;
  return [
    countText(stockSheets, 'stock sheet'),
    `${cutPanels} of ${countText(panels, 'panel')} cut`,
    slivers === 0 ? 'no slivers' : countText(slivers, 'sliver'),
    asymmetry === 0 ? 'symmetrical' : 'not symmetrical',
  ].join(', ');
}

/** What another start costs or gives against the chosen one, in words: "2 more cut panels; but 1 sliver fewer". */
export function tradeInWords(layout: ZoneLayout, candidate: StartCandidate): string {
  const now = {
    panels: layout.panels.length,
    cut: layout.panels.filter(({ full }) => !full).length,
    slivers: layout.panels.filter(({ sliver }) => sliver).length,
  };
  const parts = [
    difference(candidate.slivers - now.slivers, 'sliver'),
    difference(candidate.cutPanels - now.cut, 'cut panel'),
    difference(candidate.panels - now.panels, 'panel'),
  ].filter((part) => part !== null);
  return parts.length > 0 ? parts.join(', ') : 'as many panels and cuts';
}

/** "starts 1420 from left, 700 from floor" */
export function startPlace({ start }: Pick<StartCandidate, 'start'>): string {
  return `${formatHundredth(start.x)} from left, ${formatHundredth(start.y)} from floor`;
}

function difference(count: number, noun: string): string | null {
  if (count === 0) return null;
  return `${countText(Math.abs(count), noun)} ${count > 0 ? 'more' : 'fewer'}`;
}
