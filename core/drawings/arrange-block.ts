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
  /** Height of a page. */
  readonly room: Mm;
}

interface Drawn {
  readonly scale: Scale;
  readonly sketch: Sketch;
}

/** The narrowest column that lists are legible in beside a sketch. */
const listWidth: Mm = 62;
const gap: Mm = 4;
const betweenBlocks: Mm = 5;

/**
 * A sketch with its lists: in half the width of the page if everything is legible there, else over the whole width, beside
 * or over its lists, at the largest standard scale (ISO 5455) that fits. Lists longer than a page follow as rows of their own.
 */
export function arrangeBlock({ size, sketchAt, head, lists, room }: Arrangement): PageBlock[] {
  const sketches = scales
    .filter((scale) => onPaper(size[0], scale) <= wholeWidth && onPaper(size[1], scale) <= room)
    .slice(0, 4)
    .map((scale): Drawn => ({ scale, sketch: sketchAt(scale) }));
  const heightUnder = ({ scale, sketch }: Drawn, width: Mm) =>
    head(width, scale).height + sketch.height + gap + heightOf(lists(width, sketch));
  const heightBeside = ({ scale, sketch }: Drawn) =>
    head(wholeWidth, scale).height +
    Math.max(sketch.height, heightOf(lists(wholeWidth - sketch.width - gap, sketch)));
  const under = (width: Mm) =>
    sketches.find((drawn) => drawn.sketch.width <= width && heightUnder(drawn, width) <= room);

  const half = under(halfWidth);
  if (half?.sketch.isComplete) return [drawUnder(half, 'half')];
  const beside = sketches.find(
    (drawn) => drawn.sketch.width <= wholeWidth - listWidth - gap && heightBeside(drawn) <= room,
  );
  const below = under(wholeWidth);
  if (beside && (!below || beside.scale.real <= below.scale.real)) return [drawBeside(beside)];
  if (below) return [drawUnder(below, 'whole')];
  const alone = sketches.find(
    ({ scale, sketch }) =>
      sketch.width <= wholeWidth && head(wholeWidth, scale).height + sketch.height <= room,
  );
  if (!alone) throw new Error(`A sketch of ${size[0]} × ${size[1]} mm fits no page at a standard scale.`);
  return drawRunningOn(alone);

  function drawUnder(drawn: Drawn, width: PageBlock['width']): PageBlock {
    const { scale, sketch } = drawn;
    const wide = width === 'half' ? halfWidth : wholeWidth;
    const top = head(wide, scale);
    return {
      width,
      ratio: ratioOf(scale),
      height: heightUnder(drawn, wide) + betweenBlocks,
      at: (left, y) => [
        ...top.at(left, y),
        ...placeSketch(sketch, left, y - top.height),
        ...stack(lists(wide, sketch), left, y - top.height - sketch.height - gap),
      ],
    };
  }

  function drawBeside(drawn: Drawn): PageBlock {
    const { scale, sketch } = drawn;
    const top = head(wholeWidth, scale);
    return {
      width: 'whole',
      ratio: ratioOf(scale),
      height: heightBeside(drawn) + betweenBlocks,
      at: (left, y) => [
        ...top.at(left, y),
        ...placeSketch(sketch, left, y - top.height),
        ...stack(lists(wholeWidth - sketch.width - gap, sketch), left + sketch.width + gap, y - top.height),
      ],
    };
  }

  function drawRunningOn({ scale, sketch }: Drawn): PageBlock[] {
    const top = head(wholeWidth, scale);
    const drawing: PageBlock = {
      width: 'whole',
      ratio: ratioOf(scale),
      height: top.height + sketch.height + gap,
      at: (left, y) => [...top.at(left, y), ...placeSketch(sketch, left, y - top.height)],
    };
    const rows = lists(wholeWidth, sketch).map((row): PageBlock => ({ width: 'whole', ...row }));
    return [drawing, ...rows, { width: 'whole', height: betweenBlocks, at: () => [] }];
  }
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
