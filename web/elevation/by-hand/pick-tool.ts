import type { Hand } from '../hand.svelte';
import { choose, sameTool, type HandToolName, type Tool } from '../tool';
import { setByHandAtChosen } from './set-by-hand';

/** Takes a tool up, or puts it away again. With a panel chosen, what needs no other place is done to that panel. */
export function pickTool(hand: Hand, what: HandToolName): void {
  hand.open.station = 'panels';
  const tool: Tool = { kind: 'by-hand', what };
  const isOfPanel =
    what === 'whole-panel' || what === 'no-panel' || what === 'split-upright' || what === 'split-level';
  if (isOfPanel && hand.open.selection?.kind === 'panel') setByHandAtChosen(hand, what);
  else hand.takeUp(sameTool(tool, hand.tool) ? choose : tool);
  focusDrawing();
}

export function pickStart(hand: Hand, zone: string): void {
  hand.open.station = 'panels';
  const tool: Tool = { kind: 'start', zone };
  hand.takeUp(sameTool(tool, hand.tool) ? choose : tool);
  focusDrawing();
}

function focusDrawing(): void {
  document.querySelector<HTMLElement>('[data-testid="elevation"]')?.focus();
}
