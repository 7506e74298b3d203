import { boxOf } from '../geometry/polygon';
import type { Fitting } from '../job/schema';
import type { KeepOut } from '../survey/surveyed-wall';
import { hatch } from './hatch';
import type { Item, PaperPoint, Stroke } from './page';
import { boxHeight, boxWidth, type PaperBox } from './paper';
import { paperBox, paperPoint, paperRing, type View } from './setting-out-view';
import { circleOf } from './setting-out-stops';

/**
 * A fitting as an elevation shows it: its true outline, and inside it as much of a sign as there is room for.
 * Sockets carry one ring for each outlet that the width suggests (common practice, no source).
 */
export function fittingSymbol(fitting: Fitting, keepOut: KeepOut, view: View): Item[] {
  const box = paperBox(view, boxOf(keepOut.bare.ring));
  const outline = paperRing(view, keepOut.bare.ring);
  const circle = circleOf(keepOut.bare);
  const items: Item[] = [
    { kind: 'fill', rings: [outline], colour: 'white' },
    { kind: 'stroke', points: outline, closed: true, width: 0.5 },
  ];
  switch (fitting.kind) {
    case 'socket':
      return [...items, ...outlets(box)];
    case 'switch':
      return [...items, ...rocker(box)];
    case 'light':
      return [...items, ...cross(box, 1 / Math.SQRT2)];
    case 'thermostat':
      return [...items, ring(middleOf(box), Math.min(boxWidth(box), boxHeight(box)) * 0.3)];
    case 'radiator':
      return [...items, ...ribs(box)];
    case 'beam-end':
      return [...items, ...cross(box, 1)];
    case 'pipe':
      return circle
        ? [...items, ...centreLines(paperPoint(view, circle.centre), boxWidth(box) / 2)]
        : [...items, ...hatchOf(outline)];
    case 'free':
      return [...items, ...hatchOf(outline)];
    // A kind of the user's own has no sign that anyone would know: its name stands beside it.
    default:
      return items;
  }
}

function outlets(box: PaperBox): Item[] {
  const upright = boxHeight(box) > boxWidth(box);
  const long = upright ? boxHeight(box) : boxWidth(box);
  const short = upright ? boxWidth(box) : boxHeight(box);
  const count = Math.max(1, Math.round(long / short));
  const { x, y } = middleOf(box);
  return Array.from({ length: count }, (_, i) => {
    const shift = (i - (count - 1) / 2) * (long / count);
    return ring(upright ? { x, y: y + shift } : { x: x + shift, y }, short * 0.27);
  });
}

function rocker(box: PaperBox): Item[] {
  const { x } = middleOf(box);
  const inset = boxHeight(box) * 0.22;
  return [
    line({ x, y: box.bottom + inset }, { x, y: box.top - inset }),
    line({ x: x - inset, y: box.top - inset }, { x: x + inset, y: box.top - inset }),
  ];
}

function cross(box: PaperBox, share: number): Item[] {
  const { x, y } = middleOf(box);
  const w = (boxWidth(box) / 2) * share;
  const h = (boxHeight(box) / 2) * share;
  return [
    line({ x: x - w, y: y - h }, { x: x + w, y: y + h }),
    line({ x: x - w, y: y + h }, { x: x + w, y: y - h }),
  ];
}

function ribs(box: PaperBox): Item[] {
  const count = Math.max(2, Math.min(24, Math.floor(boxWidth(box) / 2.5)));
  const inset = Math.min(1, boxHeight(box) * 0.12);
  return Array.from({ length: count - 1 }, (_, i) => {
    const x = box.left + (boxWidth(box) * (i + 1)) / count;
    return line({ x, y: box.bottom + inset }, { x, y: box.top - inset });
  });
}

function centreLines(centre: PaperPoint, radius: number): Item[] {
  const reach = radius + 1.5;
  const through = (a: PaperPoint, b: PaperPoint): Stroke => ({ ...line(a, b), width: 0.18 });
  return [
    through({ x: centre.x - reach, y: centre.y }, { x: centre.x + reach, y: centre.y }),
    through({ x: centre.x, y: centre.y - reach }, { x: centre.x, y: centre.y + reach }),
  ];
}

function hatchOf(outline: readonly PaperPoint[]): Stroke[] {
  return hatch([outline], { spacing: 1.4, angle: 135, width: 0.18, colour: 'ink' });
}

function middleOf(box: PaperBox): PaperPoint {
  return { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
}

function ring(centre: PaperPoint, radius: number): Item {
  return { kind: 'circle', centre, radius, width: 0.25 };
}

function line(a: PaperPoint, b: PaperPoint): Stroke {
  return { kind: 'stroke', points: [a, b], width: 0.25 };
}
