import type { HandToolName } from '../tool';

export interface HandTool {
  readonly what: HandToolName;
  readonly label: string;
  readonly keys: string;
  /** What to do next, as it stands under the strip. */
  readonly hint: string;
}

/** What can be chosen by hand about panels, in the order of the strip. */
export const handTools: readonly HandTool[] = [
  {
    what: 'upright-joint',
    label: 'Upright joint',
    keys: 'H U',
    hint: 'Click where an upright joint has to lie; beside an edge it stays with that edge.',
  },
  {
    what: 'level-joint',
    label: 'Level joint',
    keys: 'H L',
    hint: 'Click where a level joint has to lie; beside an edge it stays with that edge.',
  },
  {
    what: 'no-joints',
    label: 'No joints',
    keys: 'H N',
    hint: 'Drag from corner to corner over the place where no joint may lie.',
  },
  {
    what: 'whole-panel',
    label: 'Whole panel',
    keys: 'H W',
    hint: 'Click where the panel has to be a whole stock sheet.',
  },
  {
    what: 'no-panel',
    label: 'No panel',
    keys: 'H O',
    hint: 'Click the panel that is to be left out: nothing is fixed there.',
  },
  {
    what: 'split-upright',
    label: 'Split upright',
    keys: 'H X',
    hint: 'Click where a panel is to be parted upright.',
  },
  {
    what: 'split-level',
    label: 'Split level',
    keys: 'H Y',
    hint: 'Click where a panel is to be parted level.',
  },
  { what: 'join', label: 'Join two', keys: 'H J', hint: 'Click a panel, then the one beside it.' },
];

export function hintOfHandTool(tool: HandToolName): string {
  return handTools.find(({ what }) => what === tool)?.hint ?? '';
}
