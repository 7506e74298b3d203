import type { NamedKind } from '../../core/job/kind-names';
import type { Command } from '../commands/command';
import type { StationName } from '../job/open-job.svelte';
import { finestStep, lengthWords } from '../look/figures';
import type { Hand } from './hand.svelte';
import { hungTools, markingTools, peopleTools, surveyTools, zoneTools, type ToolChoice } from './tool';

export function putInCommands(hand: Hand): readonly Command[] {
  const choices = (tools: readonly ToolChoice[], station: StationName) =>
    tools.map(({ label, keys, tool }): Command => ({
      name: `Put in: ${label}`,
      group: 'Put in',
      keys,
      whyNot: hand.wall ? null : 'add a wall first',
      run: () => {
        hand.open.station = station;
        hand.takeUp(tool);
        focusDrawing();
      },
    }));
  const own = (kinds: readonly NamedKind[], of: 'fitting' | 'hung', key: 'P' | 'I') =>
    kinds.slice(0, 9).map(({ name }, i): ToolChoice => ({
      label: name,
      keys: `${key} ${i + 1}`,
      tool: { kind: 'put-in', of, what: name },
    }));
  return [
    ...choices([...surveyTools, ...own(hand.ownKinds(), 'fitting', 'P')], 'survey'),
    ...choices(zoneTools, 'zones'),
    ...choices([...hungTools, ...own(hand.ownHungKinds(), 'hung', 'I')], 'hanging'),
    ...choices(peopleTools, 'hanging').map((command) => ({
      ...command,
      also: 'people below under the wall',
    })),
    ...choices(markingTools, 'zones').map((command) => ({
      ...command,
      also: 'marking on a zone',
      whyNot: hand.wall?.zones.length ? null : 'put in a zone first',
    })),
  ];
}

/** What keys do on the drawing while it holds the focus. */
export function drawingCommands(hand: Hand): readonly Command[] {
  const { selection } = hand.open;
  const whyNot = selection ? null : 'nothing is chosen';
  const key = (name: string, keys: string, init: KeyboardEventInit, also?: string): Command => ({
    name,
    group: 'Chosen objects',
    keys,
    also,
    whyNot,
    heardElsewhere: true,
    run: () => pressOnDrawing(init),
  });
  return [
    {
      ...key('Choose the next object', 'Tab', { key: 'Tab' }),
      whyNot: hand.wall ? null : 'there is no wall',
    },
    {
      ...key('Choose the previous object', 'Shift+Tab', { key: 'Tab', shiftKey: true }),
      whyNot: hand.wall ? null : 'there is no wall',
    },
    key(`Move ${lengthWords(finestStep())} left`, 'ArrowLeft', { key: 'ArrowLeft' }, 'nudge Shift 10'),
    key(`Move ${lengthWords(finestStep())} right`, 'ArrowRight', { key: 'ArrowRight' }, 'nudge Shift 10'),
    key(`Move ${lengthWords(finestStep())} up`, 'ArrowUp', { key: 'ArrowUp' }, 'nudge Shift 10'),
    key(`Move ${lengthWords(finestStep())} down`, 'ArrowDown', { key: 'ArrowDown' }, 'nudge Shift 10'),
    key('Copy beside itself', 'Ctrl+D', { key: 'd', ctrlKey: true }),
    key('Delete', 'Delete', { key: 'Delete' }, 'take out remove'),
    key('Let go of everything', 'Escape', { key: 'Escape' }),
  ];
}

export function viewCommands(hand: Hand): readonly Command[] {
  return [
    {
      name: hand.figure ? 'Hide the person' : 'Show a person',
      group: 'View',
      keys: 'V F',
      run: () => (hand.figure = !hand.figure),
    },
    {
      name: hand.heights ? 'Hide usual heights' : 'Show usual heights',
      group: 'View',
      keys: 'V H',
      also: 'reach writing sitting standing',
      run: () => (hand.heights = !hand.heights),
    },
    {
      name: hand.room.wanted ? 'Show this wall alone' : 'Show the room in one strip',
      group: 'View',
      keys: 'V R',
      also: 'walls corner fold neighbours',
      whyNot: hand.room.isThere ? null : 'no other wall is in its room',
      run: () => hand.showRoom(!hand.room.wanted),
    },
    {
      name: 'Measure on the drawing',
      group: 'View',
      keys: 'M M',
      also: 'distance length between',
      whyNot: hand.wall ? null : 'there is no wall',
      run: () => {
        hand.takeUp({ kind: 'measure' });
        focusDrawing();
      },
    },
    { name: 'Fit the wall', group: 'View', keys: '0', heardElsewhere: true, run: () => hand.fit() },
    { name: 'Zoom in', group: 'View', keys: '+', heardElsewhere: true, run: () => hand.view.zoom(1.25) },
    { name: 'Zoom out', group: 'View', keys: '-', heardElsewhere: true, run: () => hand.view.zoom(0.8) },
  ];
}

function pressOnDrawing(init: KeyboardEventInit): void {
  focusDrawing();
  const drawing = document.querySelector('[data-testid="elevation"]');
  drawing?.dispatchEvent(new KeyboardEvent('keydown', { ...init, bubbles: true, cancelable: true }));
}

function focusDrawing(): void {
  document.querySelector<HTMLElement>('[data-testid="elevation"]')?.focus();
}
