import type { FixingPoint } from '../../../core/job/ground-schema';
import { toHundredth } from '../../../core/units';
import { acrossOf, condensed, downOf, inks, strokeLine, type Pen } from './pen';

/** Fixing points: studs and pattresses as dash-dotted boxes with a cross on their middle, drillings as a circle with one. */
export function paintFixingPoints(pen: Pen, points: readonly FixingPoint[], chosen?: string): void {
  const { context, frame } = pen;
  for (const { id, kind, x, y, width, height = width } of points) {
    const across = (mm: number) => acrossOf(frame, toHundredth(mm));
    const down = (mm: number) => downOf(frame, toHundredth(mm));
    context.save();
    const ink = id === chosen ? inks['red-lead'] : inks.ink;
    context.strokeStyle = id === chosen ? ink : inks.soft;
    context.lineWidth = id === chosen ? 2 : 1;
    const isHole = kind === 'hole';
    const [middleX, middleY] = isHole ? [across(x), down(y)] : [across(x + width / 2), down(y + height / 2)];
    if (isHole) {
      context.beginPath();
      context.arc(middleX, middleY, Math.max(4, (width / 2) * frame.scale), 0, 2 * Math.PI);
      context.stroke();
    } else {
      context.setLineDash([10, 3, 2, 3]);
      context.strokeRect(across(x), down(y + height), width * frame.scale, height * frame.scale);
    }
    context.restore();
    strokeLine(pen, [middleX - 7, middleY, middleX + 7, middleY], ink, 1);
    strokeLine(pen, [middleX, middleY - 7, middleX, middleY + 7], ink, 1);
    context.font = `600 12px ${condensed}`;
    context.fillStyle = ink;
    context.textAlign = 'left';
    context.textBaseline = 'alphabetic';
    // A stud is named near its top, where fewer things are in the way.
    const named = kind === 'stud' ? down(y + height) + 16 : middleY - 4;
    context.fillText(id, middleX + 9, named);
  }
}
