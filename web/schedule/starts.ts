import { countText } from '../../core/drawings/figure-text';
import type { Layout, Start } from '../../core/job/schema';
import type { StartCandidate, ZoneLayout } from '../../core/panels/panel';
import { hundredthFigure } from '../look/figures';

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
  const { stockSheets, cutPanels, panels, slivers, nearCorners, asymmetry } = candidate;
  return [
    countText(stockSheets, 'stock sheet'),
    `${cutPanels} of ${countText(panels, 'panel')} cut`,
    slivers === 0 ? 'no slivers' : countText(slivers, 'sliver'),
    ...(nearCorners > 0 ? [countText(nearCorners, ...jointsByCracks)] : []),
    asymmetry === 0 ? 'symmetrical' : 'not symmetrical',
  ].join(', ');
}

/** What another start gives or costs against the chosen one: "1 stock sheet more, but 2 cut panels fewer". */
export function tradeInWords(chosen: StartCandidate, other: StartCandidate): string {
  const differences = [
    compare(other.slivers - chosen.slivers, 'sliver'),
    compare(other.nearCorners - chosen.nearCorners, ...jointsByCracks),
    compare(other.stockSheets - chosen.stockSheets, 'stock sheet'),
    compare(other.cutPanels - chosen.cutPanels, 'cut panel'),
    compare(other.panels - chosen.panels, 'panel'),
  ].filter((part) => part !== null);
  const symmetry = other.asymmetry - chosen.asymmetry;
  if (symmetry !== 0)
    differences.push({ gives: symmetry < 0, text: symmetry < 0 ? 'more even' : 'less even' });
  const said = (gives: boolean) => differences.filter((part) => part.gives === gives).map(({ text }) => text);
  const [costs, gains] = [said(false).join(', '), said(true).join(', ')];
  if (costs && gains) return `${costs}, but ${gains}`;
  return costs || gains || 'no difference but its place';
}

/** "1420 from left, 700 from floor" */
export function startPlace({ start }: Pick<StartCandidate, 'start'>): string {
  return `${hundredthFigure(start.x)} from left, ${hundredthFigure(start.y)} from floor`;
}

/** Too near to a corner of an opening or to a board joint. */
const jointsByCracks = ['joint where the wall cracks', 'joints where the wall cracks'] as const;

function compare(count: number, one: string, many?: string): { gives: boolean; text: string } | null {
  if (count === 0) return null;
  return {
    gives: count < 0,
    text: `${countText(Math.abs(count), one, many)} ${count > 0 ? 'more' : 'fewer'}`,
  };
}
