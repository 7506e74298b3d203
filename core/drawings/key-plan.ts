import type { Box } from '../geometry/polygon';
import type { WorkedWall } from '../worked-out';
import { drawOverall } from './dimension';
import { createLabelRoom, occupy } from './label-room';
import type { Item, Text, TextMeasure } from './page';
import { boxHeight, boxWidth, cornersOf, largestScale, onPaper, type PaperBox, type Scale } from './paper';
import type { WriteLength } from './paper-figures';
import { drawElevation } from './setting-out-elevation';
import { datumMark } from './setting-out-marks';
import { paperBox, type View, type WallPart } from './setting-out-view';

const margin = 22;

/**
 * The whole wall at a glance: which sheet shows which part of it, and its overall size.
 *
 * @throws Error if the wall is too large for the smallest standard scale
 */
export function keyPlan(
  wall: WorkedWall,
  box: Box,
  parts: readonly WallPart[],
  space: PaperBox,
  measure: TextMeasure,
  write: WriteLength,
): { items: Item[]; scale: Scale } {
  const width = (box.right - box.left) / 100;
  const height = (box.top - box.bottom) / 100;
  const scale = largestScale(width, height, boxWidth(space) - 2 * margin, boxHeight(space) - 2 * margin);
  if (!scale) throw new Error(`Wall ${wall.survey.wall.id} is too large for a key plan.`);
  const left = (space.left + space.right - onPaper(width, scale)) / 2;
  const bottom = (space.bottom + space.top - onPaper(height, scale)) / 2;
  const view: View = {
    scale,
    datum: { x: left - onPaper(box.left / 100, scale), y: bottom - onPaper(box.bottom / 100, scale) },
    shown: box,
    write,
  };
  const outer = paperBox(view, box);
  const room = createLabelRoom(space, measure);
  const fixed: Item[] = [
    ...drawOverall('foot', outer.bottom - 14, outer.left, outer.right, write(box.right - box.left), 3.5),
    ...drawOverall('side', outer.right + 10, outer.bottom, outer.top, write(box.top - box.bottom), 3.5),
    ...parts.flatMap((part, i) => frameOf(part, i + 2, view, parts.length)),
    ...datumMark(view),
  ];
  for (const item of fixed) if (item.kind === 'text') occupy(room, item);
  const drawn = drawElevation(wall, view, room, { extensionLines: [], brief: true, clipped: false });
  return { items: [...drawn.items, ...fixed], scale };
}

/** Frames stand a little outside the wall, so that they do not hide its lines; one row above the other. */
function frameOf({ shown, beyond }: WallPart, sheet: number, view: View, of: number): Item[] {
  const box = paperBox(view, shown);
  const frame: PaperBox = {
    left: box.left - (beyond.left === undefined ? 3 : 0),
    right: box.right + (beyond.right === undefined ? 3 : 0),
    bottom: box.bottom - (beyond.bottom === undefined ? 3 : 0),
    top: box.top + (beyond.top === undefined ? 3 : 0),
  };
  const small = boxWidth(box) < 18 || of > 12;
  const name: Text = {
    kind: 'text',
    text: small ? String(sheet) : `sheet ${sheet}`,
    height: boxWidth(box) < 9 ? 2.5 : 5,
    weight: 'semi-bold',
    ...namePlace(beyond, frame),
  };
  return [
    {
      kind: 'stroke',
      points: cornersOf(frame),
      closed: true,
      width: 0.35,
      line: 'long-dashed-double-dotted',
    },
    name,
  ];
}

/** Above a single row of parts, left of a single column, in the middle of what has neighbours both ways. */
function namePlace(
  { left, right, bottom, top }: WallPart['beyond'],
  frame: PaperBox,
): Pick<Text, 'at' | 'anchor'> {
  const x = (frame.left + frame.right) / 2;
  const y = (frame.bottom + frame.top) / 2 - 2.5;
  if (bottom === undefined && top === undefined) return { at: { x, y: frame.top + 2 }, anchor: 'middle' };
  if (left === undefined && right === undefined) return { at: { x: frame.left - 3, y }, anchor: 'end' };
  return { at: { x, y }, anchor: 'middle' };
}
