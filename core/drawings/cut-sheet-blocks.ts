import type { Hundredth, Mm } from '../units';
import type { WorkedOut } from '../worked-out';
import type { CutPattern } from './cut-patterns';
import { patternLists, stockName } from './cut-sheet-lists';
import { sketchStockSheet } from './cut-sheet-sketch';
import { cutSteps } from './cut-steps';
import { countText, sizeText } from './figure-text';
import { heightOf, stack, type FlowBlock } from './flow-table';
import type { Item, Text, TextMeasure } from './page';
import { ratioOf, scales, type Scale } from './paper';
import { placeSketch, type Sketch } from './sketch';
import { fitText, wrapText } from './text';

/** A block of a page that takes its half or its whole width. */
export interface PageBlock {
  readonly width: 'half' | 'whole';
  readonly height: Mm;
  readonly scale: Scale;
  readonly at: (left: Mm, top: Mm) => Item[];
}

export const wholeWidth: Mm = 170;
const betweenHalves: Mm = 8;
export const halfWidth: Mm = (wholeWidth - betweenHalves) / 2;
/** The narrowest column that lists are legible in. */
const listWidth: Mm = 62;
const gap: Mm = 4;

/**
 * A cutting pattern with its lists: in half the width of the page if everything is legible there, else over the whole
 * width at the largest standard scale.
 *
 * @param room the height of a page
 */
export function patternBlock(
  pattern: CutPattern,
  worked: WorkedOut,
  room: Mm,
  measure: TextMeasure,
): PageBlock {
  const { method, kerf } = worked.job.cutting;
  const steps = cutSteps(pattern.drawn, method, (kerf * 100) as Hundredth);
  const sketchAt = (scale: Scale) => sketchStockSheet(pattern, steps, scale, measure);
  const lists = (width: Mm) => patternLists(pattern, steps, width, measure);
  const head = (width: Mm, scale: Scale) => headBlock(pattern, worked, scale, width, measure);
  return arrangeBlock({ sketchAt, lists, head, room });
}

export interface Arrangement {
  readonly sketchAt: (scale: Scale) => Sketch | undefined;
  readonly lists: (width: Mm) => readonly FlowBlock[];
  readonly head: (width: Mm, scale: Scale) => FlowBlock;
  readonly room: Mm;
}

/** Sketch and lists side by side or one under the other, whichever allows the larger scale. */
export function arrangeBlock({ sketchAt, lists, head, room }: Arrangement): PageBlock {
  const sketches = scales.flatMap((scale) => {
    const sketch = scale.real <= 1000 ? sketchAt(scale) : undefined;
    return sketch ? [{ scale, sketch }] : [];
  });
  const under = (width: Mm) =>
    sketches.find(
      ({ scale, sketch }) =>
        sketch.width <= width &&
        head(width, scale).height + sketch.height + gap + heightOf(lists(width)) <= room,
    );
  const half = under(halfWidth);
  if (half?.sketch.isComplete) return stacked(half, 'half');
  const beside = sketches.find(
    ({ scale, sketch }) =>
      sketch.width <= wholeWidth - listWidth - gap &&
      head(wholeWidth, scale).height + Math.max(sketch.height, heightOf(besideLists(sketch))) <= room,
  );
  const below = under(wholeWidth);
  const best = [beside, below]
    .filter((one) => one !== undefined)
    .sort((a, b) => a.scale.real - b.scale.real)[0];
  if (!best) return overfull(sketches);
  return best === beside ? sideBySide(best) : stacked(best, 'whole');

  function besideLists(sketch: Sketch): readonly FlowBlock[] {
    return lists(wholeWidth - sketch.width - gap);
  }

  function stacked(
    { scale, sketch }: { scale: Scale; sketch: Sketch },
    width: PageBlock['width'],
  ): PageBlock {
    const wide = width === 'half' ? halfWidth : wholeWidth;
    const top = head(wide, scale);
    const list = lists(wide);
    return {
      width,
      scale,
      height: top.height + sketch.height + gap + heightOf(list),
      at: (left, y) => [
        ...top.at(left, y),
        ...placeSketch(sketch, left, y - top.height),
        ...stack(list, left, y - top.height - sketch.height - gap),
      ],
    };
  }

  function sideBySide({ scale, sketch }: { scale: Scale; sketch: Sketch }): PageBlock {
    const top = head(wholeWidth, scale);
    const list = besideLists(sketch);
    return {
      width: 'whole',
      scale,
      height: top.height + Math.max(sketch.height, heightOf(list)),
      at: (left, y) => [
        ...top.at(left, y),
        ...placeSketch(sketch, left, y - top.height),
        ...stack(list, left + sketch.width + gap, y - top.height),
      ],
    };
  }

  /** Lists longer than a page: the largest sketch that fits the page, and its lists run on after it. */
  function overfull(all: readonly { scale: Scale; sketch: Sketch }[]): PageBlock {
    const fitting = all.find(
      ({ scale, sketch }) =>
        sketch.width <= wholeWidth && head(wholeWidth, scale).height + sketch.height <= room,
    );
    if (!fitting) throw new Error('A stock sheet is too large for any standard scale on A4.');
    return stacked(fitting, 'whole');
  }
}

function headBlock(
  { number, sheets, drawn }: CutPattern,
  worked: WorkedOut,
  scale: Scale,
  width: Mm,
  measure: TextMeasure,
): FlowBlock {
  const rack = drawn.fromRack !== null;
  const ids = sheets.map(({ id }) => id).join(', ');
  const what = rack
    ? `${countText(sheets.length, 'rack piece')} ${ids}, ${sizeText(drawn.width, drawn.height)}`
    : `${countText(sheets.length, 'stock sheet')} ${ids}`;
  return titledBlock(`Pattern ${number}`, [what, stockName(worked, drawn.stock)], scale, width, measure);
}

/** Title with the scale and the face beside it, lines of text under it, a rule above. */
export function titledBlock(
  title: string,
  lines: readonly string[],
  scale: Scale,
  width: Mm,
  measure: TextMeasure,
): FlowBlock {
  const wrapped = lines.flatMap((line) => wrapText(line, width, 2.5, {}, measure));
  const aside = `${ratioOf(scale)}, seen from the face`;
  const asideWidth = measure(aside, 2.5, { face: 'condensed' });
  return {
    height: 6.5 + wrapped.length * 4 + 2.5,
    at: (left, top) => [
      {
        kind: 'stroke',
        points: [
          { x: left, y: top },
          { x: left + width, y: top },
        ],
        width: 0.35,
      },
      fitText(
        { kind: 'text', text: title, at: { x: left, y: top - 5.3 }, height: 3.5, weight: 'semi-bold' },
        width - asideWidth - 3,
        measure,
      ),
      {
        kind: 'text',
        text: aside,
        at: { x: left + width, y: top - 5.3 },
        height: 2.5,
        face: 'condensed',
        anchor: 'end',
        colour: 'soft',
      },
      ...wrapped.map((line, i): Text => ({
        kind: 'text',
        text: line,
        at: { x: left, y: top - 10.3 - i * 4 },
        height: 2.5,
      })),
    ],
  };
}
