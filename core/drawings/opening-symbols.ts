import { boxOf } from '../geometry/polygon';
import type { Opening } from '../job/schema';
import type { KeepOut } from '../survey/surveyed-wall';
import type { Item, PaperPoint, Stroke } from './page';
import { boxHeight, boxWidth, cornersOf, grownBox, type PaperBox } from './paper';
import { paperBox, paperRing, type View } from './setting-out-view';

/**
 * An opening as an elevation shows it, true to scale: a door with the lines of its swing meeting at the hinges
 * (broken where the leaf goes away from whoever looks, unbroken where it comes towards them: common practice,
 * no source), a window with its frame and two strokes of glass, a niche or a hatch with its diagonals.
 */
export function openingSymbol(opening: Opening, keepOut: KeepOut, view: View): Item[] {
  const box = paperBox(view, boxOf(keepOut.bare.ring));
  const outline: Stroke = {
    kind: 'stroke',
    points: paperRing(view, keepOut.bare.ring),
    closed: true,
    width: 0.5,
  };
  // Whatever runs behind an opening is not there on the wall.
  const items: Item[] = [{ kind: 'fill', rings: [outline.points], colour: 'white' }, outline];
  switch (opening.kind) {
    case 'door':
      return [...items, ...doorSwing(opening, box, view)];
    case 'window':
      return [...items, ...windowFrame(keepOut, box)];
    case 'hatch':
      return [...items, ...diagonals(grownBox(box, -0.8), 'continuous')];
    case 'niche':
      return [...items, ...diagonals(box, 'dashed')];
    default:
      return items;
  }
}

function doorSwing({ hinge, swing, handle }: Opening, box: PaperBox, view: View): Item[] {
  if (hinge === undefined) return [];
  const hingesLeft = hinge !== 'right';
  const hingeX = hingesLeft ? box.left : box.right;
  const latchX = hingesLeft ? box.right : box.left;
  const apex = { x: hingeX, y: (box.bottom + box.top) / 2 };
  const line = swing === 'towards' ? 'continuous' : 'dashed';
  const items: Item[] = [box.top, box.bottom].map((y) => stroke([{ x: latchX, y }, apex], line));
  const handleHeight = ((handle ?? 1050) * view.scale.paper) / view.scale.real;
  const inset = Math.min(1.8, boxWidth(box) * 0.1) * (hingesLeft ? -1 : 1);
  if (handleHeight < boxHeight(box)) {
    items.push({
      kind: 'circle',
      centre: { x: latchX + inset, y: box.bottom + handleHeight },
      radius: 0.7,
      width: 0.25,
      fill: 'white',
    });
  }
  return items;
}

function windowFrame({ bare }: KeepOut, box: PaperBox): Item[] {
  const middle = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
  const reach = Math.min(boxWidth(box), boxHeight(box)) * 0.12;
  const glass = [-0.9, 0.9].map((shift) =>
    stroke(
      [
        { x: middle.x - reach + shift * 1.2, y: middle.y - reach - shift * 1.2 },
        { x: middle.x + reach + shift * 1.2, y: middle.y + reach - shift * 1.2 },
      ],
      'continuous',
    ),
  );
  const plain = bare.arcs.length === 0 && bare.ring.length === 4;
  const inside = grownBox(box, -1.2);
  if (!plain || boxWidth(inside) < 2 || boxHeight(inside) < 2) return glass;
  return [{ kind: 'stroke', points: cornersOf(inside), closed: true, width: 0.25 }, ...glass];
}

function diagonals(box: PaperBox, line: 'continuous' | 'dashed'): Stroke[] {
  const [a, b, c, d] = cornersOf(box) as [PaperPoint, PaperPoint, PaperPoint, PaperPoint];
  return [stroke([a, c], line), stroke([b, d], line)];
}

function stroke(points: readonly PaperPoint[], line: 'continuous' | 'dashed'): Stroke {
  return { kind: 'stroke', points, width: 0.25, line };
}
