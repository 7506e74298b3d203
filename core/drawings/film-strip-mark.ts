import type { Mm } from '../units';
import type { Item, PaperPoint, Text, TextMeasure } from './page';
import type { PaperBox } from './paper';
import { textBox } from './text';

const style = { weight: 'semi-bold' } as const;
const arrowHead: Mm = 1.4;
/** About a mark, mm. */
const clear: Mm = 0.5;

/** The largest that has room, level before turned. */
const ways = ([5, 3.5, 2.5] as const).flatMap((height) => [
  { height, turned: false },
  { height, turned: true },
]);

/** Places along the run and across it as parts of the strip: the middle first. */
const places = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9].flatMap((along) =>
  [0.5, 0.25, 0.75].map((across) => ({ along, across })),
);

/**
 * The mark of a strip and an arrow along its run, on film where there is room, else over an opening.
 *
 * @param strip what shows of it on the page
 * @param isBare whether a place on the page is not covered whole
 * @returns [] where the strip is too narrow on paper for a mark of 2.5 mm
 */
export function drawMark(
  mark: string,
  strip: PaperBox,
  isUpright: boolean,
  isBare: (place: PaperBox) => boolean,
  measure: TextMeasure,
): Item[] {
  const candidates = ways.flatMap(({ height, turned }) =>
    places.map(({ along, across }): Text => {
      const [u, v] = isUpright ? [across, along] : [along, across];
      const x = strip.left + u * (strip.right - strip.left);
      const y = strip.bottom + v * (strip.top - strip.bottom);
      return {
        kind: 'text',
        text: mark,
        at: turned ? { x: x + height / 2, y } : { x, y: y - height / 2 },
        height,
        anchor: 'middle',
        ...style,
        ...(turned && { turned: 90 as const }),
      };
    }),
  );
  const fitting = candidates.filter((text) => isInside(roomOf(text, measure), strip));
  const text = fitting.find((one) => !isBare(roomOf(one, measure))) ?? fitting[0];
  return text ? [text, ...drawArrow(roomOf(text, measure), strip, isUpright, isBare)] : [];
}

function roomOf(text: Text, measure: TextMeasure): PaperBox {
  const { left, right, bottom, top } = textBox(text, measure);
  return { left: left - clear, right: right + clear, bottom: bottom - clear, top: top + clear };
}

function isInside(a: PaperBox, b: PaperBox): boolean {
  return a.left >= b.left && a.right <= b.right && a.bottom >= b.bottom && a.top <= b.top;
}

/** From the mark on along the run, or before it; none where either would lie over an opening. */
function drawArrow(
  mark: PaperBox,
  strip: PaperBox,
  isUpright: boolean,
  isBare: (place: PaperBox) => boolean,
): Item[] {
  const [x, y] = [(mark.left + mark.right) / 2, (mark.bottom + mark.top) / 2];
  const [low, high] = isUpright ? [strip.bottom, strip.top] : [strip.left, strip.right];
  const [before, after] = isUpright ? [mark.bottom, mark.top] : [mark.left, mark.right];
  const longest = 10;
  const stretches = [
    { from: after + clear, to: Math.min(after + clear + longest, high - 1) },
    { from: Math.max(before - clear - longest, low + 1), to: before - clear },
  ];
  const point = (along: Mm, across: Mm): PaperPoint =>
    isUpright ? { x: x + across, y: along } : { x: along, y: y + across };
  const half = arrowHead / 2;
  const found = stretches.find(({ from, to }) => {
    const [a, b] = [point(from, -half), point(to, half)];
    return to - from >= 2 * arrowHead && !isBare({ left: a.x, bottom: a.y, right: b.x, top: b.y });
  });
  if (!found) return [];
  const { from, to } = found;
  return [
    { kind: 'stroke', points: [point(from, 0), point(to, 0)], width: 0.25 },
    {
      kind: 'stroke',
      points: [point(to - arrowHead, half), point(to, 0), point(to - arrowHead, -half)],
      width: 0.25,
    },
  ];
}
