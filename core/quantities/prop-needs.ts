import { itemOfThing, type Need } from './need';
import type { Settings } from './settings';
import type { WallNeeds } from './wall-needs';

/**
 * Props that hold freshly bonded panels: for as many panels as stand propped at one time, and used again for the next. Common
 * practice, no source. [] where no panel is bonded.
 */
export function propNeeds(
  walls: readonly Pick<WallNeeds, 'zones'>[],
  { propsPerPanel, proppedAtOnce }: Pick<Settings, 'propsPerPanel' | 'proppedAtOnce'>,
): Need[] {
  const bonded = walls
    .flatMap(({ zones }) => zones)
    .filter(({ layers }) => layers.some(({ layer }) => layer.kind === 'adhesive'))
    .reduce((sum, { measures }) => sum + measures.panels, 0);
  const panels = Math.min(bonded, proppedAtOnce);
  const count = panels * propsPerPanel;
  if (count === 0) return [];
  return [
    {
      ...{ wall: '', zone: '', delivery: '', layer: null, kind: null, coat: 0, of: 'job' },
      item: itemOfThing('prop'),
      unit: 'piece',
      net: count,
      withLoss: count,
      how: `${propsPerPanel} for each of ${panels} ${panels === 1 ? 'panel' : 'panels'} that stand propped at one time; they are used again.`,
    },
  ];
}
