import type { Marked, RunningMark } from '../../core/zones/running-marks';
import type { Wall } from '../../core/job/schema';
import type { Selection } from '../job/open-job.svelte';
import { nameOfObject, nameOfWall } from '../job/changes/names';

/** What stands at a mark, in words: "left edge of door D1". */
export function wordsOfMarked(wall: Wall, { kind, id, edge }: Marked): string {
  const name = kind === 'wall' ? nameOfWall(id) : nameOfObject(wall, { kind, id });
  return `${edgeWords[edge]} of ${name}`;
}

/** A place on the tape in mm, without needless decimals. */
export function figureOf(hundredths: number): string {
  return String(hundredths / 100);
}

/** Whether something at a mark is what is chosen. */
export function isChosen(marked: Marked, selection: Selection): boolean {
  if (!selection) return false;
  if (selection.kind === 'vertex')
    return marked.kind === 'wall' && !!marked.vertices?.includes(Number(selection.id));
  return marked.kind === selection.kind && marked.id === selection.id;
}

/** What is most wanted on a tape: what is chosen, the wall's ends, edges of openings and zones, then fittings. */
export function rankOf({ of }: RunningMark, selection: Selection): number {
  return Math.max(...of.map((marked) => (isChosen(marked, selection) ? 10 : rankOfMarked(marked))));
}

/** Of several things at one mark, the one that a typed figure most likely means. */
export function likeliest(of: readonly Marked[], selection: Selection): number {
  const chosen = of.findIndex((marked) => isChosen(marked, selection));
  if (chosen >= 0) return chosen;
  const movable = of.findIndex(({ kind }) => kind !== 'wall');
  return Math.max(0, movable);
}

function rankOfMarked({ kind, edge }: Marked): number {
  if (kind === 'wall') return edge === 'corner' ? 4 : 5;
  if (kind === 'fitting') return edge === 'centre' ? 2 : 1;
  return edge === 'corner' ? 2 : 3;
}

const edgeWords: Readonly<Record<Marked['edge'], string>> = {
  left: 'left edge',
  right: 'right edge',
  bottom: 'lower edge',
  top: 'upper edge',
  centre: 'middle',
  corner: 'corner',
};
