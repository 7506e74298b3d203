import type { Mm } from '../units';
import { heightOf, stack, type FlowBlock } from './flow-table';
import { halfWidth, wholeWidth, type PageBlock } from './page-blocks';
import type { Text, TextMeasure } from './page';
import { onPaper, ratioOf, scales, type Scale } from './paper';
import { placeSketch, type Sketch } from './sketch';
import { fitText, wrapText } from './text';

export interface Arrangement {
  /** Real size of what is drawn, mm. */
  readonly size: readonly [Mm, Mm];
  readonly sketchAt: (scale: Scale) => Sketch;
  readonly head: (width: Mm, scale: Scale) => FlowBlock;
  readonly lists: (width: Mm, sketch: Sketch) => readonly FlowBlock[];
  /** Where figures are longer than mm are: the narrowest column that lists are legible in beside a sketch. */
  readonly listWidth?: Mm;
  /** Height of a page. */
  readonly room: Mm;
}

/** One way to set a sketch and its lists. */
interface Laid extends Pick<PageBlock, 'width' | 'height' | 'at'> {
  readonly scale: Scale;
  readonly sketch: Sketch;
}

/** The narrowest column that lists are legible in beside a sketch. */
const usualListWidth: Mm = 62;
const gap: Mm = 3;
const betweenBlocks: Mm = 5;

/**
 * A sketch with its lists: in half the width of the page if everything has its place there, or if it can be read and would
 * be no more than a scale larger over the whole width; else over the whole width, beside or over its lists, at the largest
 * standard scale (ISO 5455) that fits. Lists longer than a page follow as rows of their own.
 */
export function arrangeBlock({
  size,
  sketchAt,
  head,
  lists,
  room,
  listWidth = usualListWidth,
}: Arrangement): PageBlock[] {
  const fitting = scales
    .filter((scale) => onPaper(size[0], scale) <= wholeWidth && onPaper(size[1], scale) <= room)
    .slice(0, 4);
  // Sketches cost far more than all the rest: each is drawn when it is first looked at.
  const sketches = new Map<Scale, Sketch>();
  const sketchOf = (scale: Scale): Sketch => {
    const sketch = sketches.get(scale) ?? sketchAt(scale);
    sketches.set(scale, sketch);
    return sketch;
  };
  const firstThatFits = (width: Mm, lay: (scale: Scale, sketch: Sketch) => Laid): Laid | undefined => {
    for (const scale of fitting) {
      if (onPaper(size[0], scale) > width || sketchOf(scale).width > width) continue;
      const laid = lay(scale, sketchOf(scale));
      if (laid.height <= room) return laid;
    }
    return undefined;
  };

  const half = firstThatFits(halfWidth, (scale, sketch) => layUnder(scale, sketch, 'half'));
  if (half?.sketch.isComplete) return [blockOf(half)];
  const beside = firstThatFits(wholeWidth - listWidth - gap, layBeside);
  const below = firstThatFits(wholeWidth, (scale, sketch) => layUnder(scale, sketch, 'whole'));
  const whole = beside && (!below || beside.scale.real <= below.scale.real) ? beside : below;
  const isLittleSmaller = half && whole && scales.indexOf(half.scale) <= scales.indexOf(whole.scale) + 1;
  if (half?.sketch.isLegible && isLittleSmaller) return [blockOf(half)];
  if (whole) return [blockOf(whole)];
  const alone = firstThatFits(wholeWidth, layAlone);
  if (!alone) throw new Error(`A sketch of ${size[0]} × ${size[1]} mm fits no page at a standard scale.`);
  const rows = lists(wholeWidth, alone.sketch).map((row): PageBlock => ({ width: 'whole', ...row }));
  return [blockOf(alone), ...withGapBelow(rows)];

  function layUnder(scale: Scale, sketch: Sketch, width: PageBlock['width']): Laid {
    const wide = width === 'half' ? halfWidth : wholeWidth;
    const top = head(wide, scale);
    const under = lists(wide, sketch);
    return {
      scale,
      sketch,
      width,
      height: top.height + sketch.height + gap + heightOf(under),
      at: (left, y) => [
        ...top.at(left, y),
        ...placeSketch(sketch, left, y - top.height),
        ...stack(under, left, y - top.height - sketch.height - gap),
      ],
    };
  }

  function layBeside(scale: Scale, sketch: Sketch): Laid {
    const top = head(wholeWidth, scale);
    const aside = lists(wholeWidth - sketch.width - gap, sketch);
    return {
      scale,
      sketch,
      width: 'whole',
      height: top.height + Math.max(sketch.height, heightOf(aside)),
      at: (left, y) => [
        ...top.at(left, y),
        ...placeSketch(sketch, left, y - top.height),
        ...stack(aside, left + sketch.width + gap, y - top.height),
      ],
    };
  }

  function layAlone(scale: Scale, sketch: Sketch): Laid {
    const top = head(wholeWidth, scale);
    return {
      scale,
      sketch,
      width: 'whole',
      height: top.height + sketch.height,
      at: (left, y) => [...top.at(left, y), ...placeSketch(sketch, left, y - top.height)],
    };
  }
}

function blockOf({ width, height, at, scale }: Laid): PageBlock {
  return { width, height, at, ratio: ratioOf(scale), gap: betweenBlocks };
}

/** Blocks of which the last keeps its distance from what follows. */
export function withGapBelow(blocks: readonly PageBlock[]): PageBlock[] {
  return blocks.map((block, i) => (i === blocks.length - 1 ? { ...block, gap: betweenBlocks } : block));
}

/** A rule, the title with scale and face at its right, and lines of text. */
export function titledHead(
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
