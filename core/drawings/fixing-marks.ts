import type { FixingPoint } from '../job/ground-schema';
import { boxOfFixingPoint } from '../survey/fixing-points';
import type { SurveyedWall } from '../survey/surveyed-wall';
import { toHundredth, type Mm } from '../units';
import { placeFirst, type LabelRoom } from './label-room';
import type { PaperPoint, Stroke, Text } from './page';
import { cornersOf, type PaperBox } from './paper';
import { paperBox, shows, type View } from './setting-out-view';

/*
 * Fixing points on the setting-out drawing: studs and pattresses lie behind the wall's face and are drawn as hidden edges,
 * dashed (ISO 128-2, from memory), a stud with its centre line; a drilling is a circle with its centre lines.
 */

/** A drilling is smaller than a pen's dot at 1:20. */
const leastRadius = 0.9;
const pastCircle = 1.4;

export function fixingMarks({ wall }: SurveyedWall, view: View): Stroke[] {
  return shownPoints(wall.fixingPoints ?? [], view).flatMap((point) => {
    const box = paperBox(view, boxOfFixingPoint(point));
    if (point.kind === 'hole') return drilling(middleOfBox(box), (box.right - box.left) / 2);
    return point.kind === 'stud' ? stud(box) : pattress(box);
  });
}

export function drilling({ x, y }: PaperPoint, radius: Mm): Stroke[] {
  const round = Math.max(leastRadius, radius);
  const reach = round + pastCircle;
  return [
    { kind: 'stroke', points: circle({ x, y }, round), closed: true, width: 0.25 },
    line({ x: x - reach, y }, { x: x + reach, y }, 0.18),
    line({ x, y: y - reach }, { x, y: y + reach }, 0.18),
  ];
}

export function stud(box: PaperBox): Stroke[] {
  const x = (box.left + box.right) / 2;
  return [
    { ...line({ x: box.left, y: box.bottom }, { x: box.left, y: box.top }, 0.18), line: 'dashed' },
    { ...line({ x: box.right, y: box.bottom }, { x: box.right, y: box.top }, 0.18), line: 'dashed' },
    { ...line({ x, y: box.bottom }, { x, y: box.top }, 0.18), line: 'long-dashed-dotted' },
  ];
}

export function pattress(box: PaperBox): Stroke[] {
  return [{ kind: 'stroke', points: cornersOf(box), closed: true, width: 0.18, line: 'dashed' }];
}

/** `X1 Ø 8`, `U3`, `G1 pattress`, where there is room. */
export function labelFixingPoints({ wall }: SurveyedWall, view: View, room: LabelRoom): Text[] {
  return shownPoints(wall.fixingPoints ?? [], view).flatMap((point) => {
    const box = paperBox(view, boxOfFixingPoint(point));
    const base = { kind: 'text', height: 2.5, face: 'condensed', weight: 'semi-bold' } as const;
    const words =
      point.kind === 'hole'
        ? [`${point.id} Ø ${view.write(toHundredth(point.width))}`, point.id]
        : [`${point.id} ${point.name || point.kind}`, point.id];
    const text = placeFirst(
      room,
      words.flatMap((text) => spots({ ...base, text }, point, box)),
    );
    return text ? [text] : [];
  });
}

type Base = Omit<Text, 'at' | 'anchor' | 'turned'>;

function spots(base: Base, { kind }: FixingPoint, box: PaperBox): Text[] {
  const { x, y } = middleOfBox(box);
  if (kind === 'stud') {
    // Along the stud, near its top first, where fewer things are in the way.
    return [0.92, 0.8, 0.65, 0.5, 0.35, 0.2, 0.08].flatMap((share): Text[] => {
      const at = box.bottom + (box.top - box.bottom) * share;
      return [
        { ...base, anchor: 'middle', turned: 90, at: { x: box.left - 0.8, y: at } },
        { ...base, anchor: 'middle', turned: 90, at: { x: box.right + 0.8 + base.height, y: at } },
      ];
    });
  }
  const away = kind === 'hole' ? Math.max(leastRadius, (box.right - box.left) / 2) + 0.9 : 0.9;
  const [left, right, bottom, top] =
    kind === 'hole' ? [x - away, x + away, y - away, y + away] : [box.left, box.right, box.bottom, box.top];
  return [
    { ...base, anchor: 'start', at: { x: right + 0.8, y: top + 0.4 } },
    { ...base, anchor: 'end', at: { x: left - 0.8, y: top + 0.4 } },
    { ...base, anchor: 'start', at: { x: right + 0.8, y: bottom - 0.4 - base.height } },
    { ...base, anchor: 'end', at: { x: left - 0.8, y: bottom - 0.4 - base.height } },
    { ...base, anchor: 'middle', at: { x, y: top + 1.6 } },
    { ...base, anchor: 'middle', at: { x, y: bottom - 1.6 - base.height } },
    { ...base, anchor: 'middle', at: { x, y: y - base.height / 2 } },
  ];
}

function shownPoints(points: readonly FixingPoint[], view: View): FixingPoint[] {
  return points.filter((point) => {
    const { left, bottom, right, top } = boxOfFixingPoint(point);
    return shows(view, [
      { x: left, y: bottom },
      { x: right, y: top },
    ]);
  });
}

function middleOfBox({ left, bottom, right, top }: PaperBox): PaperPoint {
  return { x: (left + right) / 2, y: (bottom + top) / 2 };
}

function line(a: PaperPoint, b: PaperPoint, width: Stroke['width']): Stroke {
  return { kind: 'stroke', points: [a, b], width };
}

/** A circle as a stroke, so that it is clipped and broken round texts as other lines are. */
function circle(centre: PaperPoint, radius: Mm): PaperPoint[] {
  const parts = 24;
  return Array.from({ length: parts }, (_, i) => ({
    x: centre.x + radius * Math.cos((2 * Math.PI * i) / parts),
    y: centre.y + radius * Math.sin((2 * Math.PI * i) / parts),
  }));
}
