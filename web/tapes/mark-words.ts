import type { Marked } from '../../core/zones/running-marks';
import type { Wall } from '../../core/job/schema';
import type { Selection } from '../job/open-job.svelte';
import { nameOfObject, nameOfWall } from '../job/changes/names';
import { lengthFigure } from '../look/figures';
import { nameOfLine } from '../job/changes/survey-lines';
import type { TapeMark, TapeMarked } from './tape-marks';

/** What stands at a mark, in words: "left edge of door D1". */
export function wordsOfMarked(wall: Wall, { kind, id, edge }: TapeMarked): string {
  if (kind === 'joint') return `joint in zone ${id}`;
  if (kind === 'line') {
    const line = wall.lines?.find((entry) => entry.id === id);
    return line ? nameOfLine(line) : `joint ${id}`;
  }
  const name = kind === 'wall' ? nameOfWall(id) : nameOfObject(wall, { kind, id });
  return `${edgeWords[edge]} of ${name}`;
}

/** A place on the tape, without needless decimals. */
export function figureOf(hundredths: number): string {
  return lengthFigure(hundredths / 100);
}

/** Whether something at a mark is what is chosen. */
export function isChosen(marked: TapeMarked, selection: Selection): boolean {
  if (!selection || marked.kind === 'joint') return false;
  if (selection.kind === 'vertex')
    return marked.kind === 'wall' && !!marked.vertices?.includes(Number(selection.id));
  return marked.kind === selection.kind && marked.id === selection.id;
}

/** What is most wanted on a tape: what is chosen, the wall's ends, edges of openings and zones, fittings, then joints. */
export function rankOf({ of }: TapeMark, selection: Selection): number {
  return Math.max(...of.map((marked) => (isChosen(marked, selection) ? 10 : rankOfMarked(marked))));
}

/** Of several things at one mark, the one that a typed figure most likely means. */
export function likeliest(of: readonly TapeMarked[], selection: Selection): number {
  const chosen = of.findIndex((marked) => isChosen(marked, selection));
  if (chosen >= 0) return chosen;
  const movable = of.findIndex(({ kind }) => kind !== 'wall');
  return Math.max(0, movable);
}

/** Whether nothing but joints stands at a mark. */
export function isJoint({ of }: TapeMark): boolean {
  return of.every(({ kind }) => kind === 'joint');
}

function rankOfMarked({ kind, edge }: TapeMarked): number {
  if (kind === 'joint') return 0;
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
