import type { End } from '../build-up/edge-ends';
import { surveyLineNames } from '../job/names';
import type { ConcealedKind } from '../survey/concealed-lines';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { edgeEndSample, endWords } from './edge-end-marks';
import { drilling, pattress, stud } from './fixing-marks';
import type { Item, Stroke } from './page';
import type { PaperBox } from './paper';
import { concealedLine } from './survey-lines';

/** A sample of a line or sign as the drawing has it, and what it stands for. */
export interface KeyEntry {
  readonly words: string;
  /** Within a box of `sampleWidth` and the height of a line of text. */
  readonly sample: (box: PaperBox) => Item[];
}

export const sampleWidth: Mm = 14;

/** The key of what lies behind or in the wall and of how layers end; only what this wall has. */
export function drawingKey({ survey: { wall, movementJoints }, zones }: WorkedWall): KeyEntry[] {
  const kinds = new Set((wall.fixingPoints ?? []).map(({ kind }) => kind));
  const lineKinds = new Set((wall.lines ?? []).map(({ kind }) => kind));
  const ended = new Set(zones.flatMap(({ buildUp }) => buildUp.edges.stretches.map(({ end }) => end)));
  return [
    ...(lineKinds.has('board-joint') ? [boardJoint] : []),
    ...(movementJoints.length > 0 ? [movementJoint] : []),
    ...concealed.filter((kind) => lineKinds.has(kind)).map(concealedEntry),
    ...(kinds.has('stud') ? [entry('stud, with its centre line', (box) => stud(narrow(box)))] : []),
    ...(kinds.has('pattress') ? [entry('pattress behind the board', pattress)] : []),
    ...(kinds.has('hole') ? [entry('drilling, made before steel hides the wall', drillingIn)] : []),
    ...ends
      .filter(([end]) => ended.has(end))
      .map(([end, words]) => entry(words, (box) => edgeEndSample(end, box))),
  ];
}

const ends = Object.entries(endWords) as [End, string][];

const boardJoint = entry('board joint', (box) => [{ ...across(box), width: 0.18, line: 'dashed' }]);

const movementJoint = entry('movement joint: no panel bridges it', (box) => [
  { ...across(box, 0.8), width: 0.25 },
  { ...across(box, -0.8), width: 0.25 },
  { ...across(box), width: 0.5, line: 'long-dashed-double-dotted' },
]);

const concealed: readonly ConcealedKind[] = ['cable', 'pipe'];

const concealedEntry = (kind: ConcealedKind) =>
  entry(`${surveyLineNames[kind]}, as found: do not drill`, (box) => [
    { ...across(box), ...concealedLine[kind] },
  ]);

function entry(words: string, sample: KeyEntry['sample']): KeyEntry {
  return { words, sample };
}

function drillingIn({ left, bottom, right, top }: PaperBox): Stroke[] {
  return drilling({ x: (left + right) / 2, y: (bottom + top) / 2 }, 0);
}

/** A piece of a stud, upright. */
function narrow({ left, bottom, right, top }: PaperBox): PaperBox {
  const middle = (left + right) / 2;
  return { left: middle - 1.2, right: middle + 1.2, bottom: bottom - 0.4, top: top + 0.4 };
}

function across({ left, bottom, right, top }: PaperBox, up: Mm = 0): Stroke {
  const y = (bottom + top) / 2 + up;
  return {
    kind: 'stroke',
    points: [
      { x: left, y },
      { x: right, y },
    ],
    width: 0.18,
  };
}
