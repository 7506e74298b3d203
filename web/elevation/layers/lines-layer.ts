import type { SurveyLine } from '../../../core/job/schema';
import type { StartingBatten } from '../../../core/panels/fixing-order';
import { isConcealed, type ConcealedKind } from '../../../core/survey/concealed-lines';
import { movementJointOf } from '../../../core/survey/movement-joint';
import { toHundredth } from '../../../core/units';
import { acrossOf, condensed, downOf, fillPolygon, inks, strokeLine, strokePolygon, type Pen } from './pen';

const dashes: Readonly<Record<ConcealedKind, number[]>> = { cable: [14, 4, 2, 4], pipe: [7, 4] };

/** Joints of the ground: a movement joint by its width, a joint between boards as a thin dashed line, cables and pipes bold; with their ids. */
export function paintSurveyLines(pen: Pen, lines: readonly SurveyLine[]): void {
  for (const line of lines) {
    const [x1, y1] = onScreen(pen, line.from);
    const [x2, y2] = onScreen(pen, line.to);
    if (line.kind === 'movement-joint') {
      const { strip } = movementJointOf(line);
      fillPolygon(pen, strip, inks.hairline);
      strokePolygon(pen, strip, inks.soft, 1);
      strokeLine(pen, [x1, y1, x2, y2], inks.ink, 1.5, [18, 4, 2, 4, 2, 4]);
    } else if (isConcealed(line)) strokeLine(pen, [x1, y1, x2, y2], inks.ink, 2, dashes[line.kind]);
    else strokeLine(pen, [x1, y1, x2, y2], inks.soft, 1, [8, 4]);
    paintId(pen, line.id, x1, y1, x2, y2);
  }
}

/** Starting battens as bold lines under the panels that stand on them. */
export function paintBattens(pen: Pen, battens: readonly StartingBatten[]): void {
  for (const { from, to } of battens) {
    const y = [downOf(pen.frame, from.y) + 2, downOf(pen.frame, to.y) + 2] as const;
    strokeLine(
      pen,
      [acrossOf(pen.frame, from.x) - 6, y[0], acrossOf(pen.frame, to.x) + 6, y[1]],
      inks.ink,
      3,
    );
  }
}

/** Near the upper or right end, left of an upright line or over it: names of zones begin at their left. */
function paintId({ context }: Pen, id: string, x1: number, y1: number, x2: number, y2: number): void {
  const isUpright = Math.abs(y2 - y1) > Math.abs(x2 - x1);
  const first = isUpright ? y1 < y2 : x1 > x2;
  const [x, y] = first ? [x1, y1] : [x2, y2];
  context.font = `600 13px ${condensed}`;
  context.fillStyle = inks.ink;
  context.textAlign = 'right';
  context.textBaseline = 'alphabetic';
  context.fillText(id, x - 6, isUpright ? y + 18 : y - 6);
}

function onScreen({ frame }: Pen, [x, y]: readonly [number, number]): [number, number] {
  return [acrossOf(frame, toHundredth(x)), downOf(frame, toHundredth(y))];
}
