import { boxOf, locate, type Polygon } from '../geometry/polygon';
import type { Mm } from '../units';
import type { Text, TextHeight, TextMeasure, TextStyle } from './page';
import { boxesOverlap, grownBox, type PaperBox } from './paper';
import { crosses } from './setting-out-view';

export interface LabelLine extends TextStyle {
  readonly text: string;
  readonly height: TextHeight;
  readonly colour?: Text['colour'];
  /** Extra room above the line. */
  readonly gap?: Mm;
}

const lineSpacing = 1.6;
const clear: Mm = 1.2;

/**
 * Lines of a label, centred under each other, where they stand wholly inside an area and clear of what is there
 * already: in the middle if they can.
 *
 * @param area paper frame, in hundredths of a paper millimetre
 * @param orientations tried in this order; 90 reads from the right
 * @returns undefined if there is no such place among the ones tried
 */
export function labelWithin(
  lines: readonly LabelLine[],
  area: Polygon,
  obstacles: readonly PaperBox[],
  orientations: readonly (0 | 90)[],
  measure: TextMeasure,
): { texts: Text[]; box: PaperBox } | undefined {
  const wide = Math.max(...lines.map((line) => measure(line.text, line.height, line)));
  const high = lines.reduce((sum, { height, gap }, i) => sum + advance(i, height, gap), 0);
  const bounds = boxOf(area.outer);
  for (const orientation of orientations) {
    const turned = orientation === 90;
    const [width, height] = turned ? [high, wide] : [wide, high];
    for (const [across, up] of spots) {
      const roomX = (bounds.right - bounds.left) / 100 - width - 2 * clear;
      const roomY = (bounds.top - bounds.bottom) / 100 - height - 2 * clear;
      if (roomX < 0 || roomY < 0) break;
      const left = bounds.left / 100 + clear + across * roomX;
      const bottom = bounds.bottom / 100 + clear + up * roomY;
      const box = { left, bottom, right: left + width, top: bottom + height };
      const room = grownBox(box, clear - 0.01);
      if (obstacles.some((obstacle) => boxesOverlap(obstacle, room)) || !isWithin(room, area)) continue;
      return { texts: linesIn(lines, box, turned), box };
    }
  }
  return undefined;
}

/** Shares of the free room, the middle first. */
const spots: readonly (readonly [number, number])[] = [
  [0.5, 0.5],
  [0.5, 0.75],
  [0.5, 0.25],
  [0.25, 0.5],
  [0.75, 0.5],
  [0.25, 0.75],
  [0.75, 0.75],
  [0.25, 0.25],
  [0.75, 0.25],
  [0.5, 0.9],
  [0.5, 0.1],
  [0.5, 1],
  [0.5, 0],
  [0, 0.5],
  [1, 0.5],
  [0, 1],
  [1, 1],
  [1, 0],
  [0, 0],
];

/**
 * A box lies in a polygon if its middle does and no edge passes through it.
 *
 * @param polygon paper frame, in hundredths of a paper millimetre
 */
export function isWithin(box: PaperBox, { outer, holes }: Polygon): boolean {
  // Half a hundredth smaller, so that an edge along the box does not count as passing through.
  const small: PaperBox = {
    left: Math.round(box.left * 100) + 0.5,
    bottom: Math.round(box.bottom * 100) + 0.5,
    right: Math.round(box.right * 100) - 0.5,
    top: Math.round(box.top * 100) - 0.5,
  };
  const { left, bottom, right, top } = small;
  const passes = (ring: readonly { readonly x: number; readonly y: number }[]) =>
    ring.some((from, i) => crosses(from, ring[(i + 1) % ring.length]!, small));
  if (passes(outer) || holes.some(passes)) return false;
  return locate({ x: (left + right) / 2, y: (bottom + top) / 2 }, { outer, holes }) === 'inside';
}

function linesIn(lines: readonly LabelLine[], box: PaperBox, turned: boolean): Text[] {
  let below = 0;
  return lines.map((line, i): Text => {
    const { text, height, gap, ...style } = line;
    below += advance(i, height, gap);
    const at = turned
      ? { x: box.left + below, y: (box.bottom + box.top) / 2 }
      : { x: (box.left + box.right) / 2, y: box.top - below };
    return {
      kind: 'text',
      text,
      height,
      anchor: 'middle',
      ...style,
      at,
      ...(turned ? { turned: 90 as const } : {}),
    };
  });
}

/** From one baseline to the next; the first from the label's top. */
function advance(index: number, height: Mm, gap: Mm = 0): Mm {
  return index === 0 ? height : height * lineSpacing + gap;
}
