import { difference, intersection, offsetMitred } from '../../geometry/clip';
import { boxOf, type Region, type Ring } from '../../geometry/polygon';
import type { Opening } from '../../job/schema';
import type { KeepOut, SurveyedWall } from '../../survey/surveyed-wall';
import { toHundredth, type Mm } from '../../units';
import type { Item } from '../page';
import { inset, type Pencil, type RealBox } from './pencil';
import { castShadow, recessShadow } from './shadows';

/*
 * Openings as they look in a finished room. Depths and widths that no survey gives are usual ones (common practice, no
 * source); nothing is dimensioned from this picture.
 */

const shade = '#1f2d36';
const timber = '#f6f3ec';
const timberEdge = '#8d8778';
const beyond = '#cbc5b6';
const usualReveal: Readonly<Record<string, Mm>> = { window: 90, niche: 120, hatch: 40, arch: 130, free: 60 };
const casingDepth: Mm = 18;
const widestCasing: Mm = 80;

export function drawOpenings({ wall, outline, keepOuts }: SurveyedWall, pencil: Pencil): Item[] {
  const room = regionOf(outline.ring);
  return wall.openings.flatMap((opening) => {
    const keepOut = keepOuts.find(({ kind, id }) => kind === 'opening' && id === opening.id);
    return keepOut ? drawOpening(opening, keepOut, room, pencil) : [];
  });
}

function drawOpening(opening: Opening, { bare }: KeepOut, wall: Region, pencil: Pencil): Item[] {
  const hole = intersection(regionOf(bare.ring), wall);
  const box = realBox(bare.ring);
  switch (opening.kind) {
    case 'door':
      return [...casing(hole, opening, wall, pencil), ...leaf(hole, box, opening, pencil)];
    case 'window':
      return [
        ...casing(hole, opening, wall, pencil),
        ...pane(hole, box, opening, pencil),
        ...sill(box, wall, pencil),
      ];
    case 'hatch':
      return [
        ...pencil.region(hole, timber),
        ...pencil.rim(hole, 4, timberEdge),
        ...rimWithin(hole, 14, 2, pencil),
        pencil.disc((box.left + box.right) / 2, box.bottom + (box.top - box.bottom) * 0.14, 9, timberEdge),
      ];
    default:
      return recess(hole, opening, pencil);
  }
}

/** A niche has a back, an arch none: one looks through it into the next room. */
function recess(hole: Region, { kind, reveal }: Opening, pencil: Pencil): Item[] {
  const depth = reveal || (usualReveal[kind] ?? 60);
  const back = kind === 'arch' ? beyond : '#e3ddd0';
  return [
    ...pencil.region(hole, back),
    ...pencil.region(recessShadow(hole, depth), shade, kind === 'arch' ? 0.3 : 0.22),
    ...pencil.rim(hole, 5, timberEdge),
  ];
}

/** As wide as the clearance that is kept for it, since no panel comes nearer. */
function casing(hole: Region, { clearance }: Opening, wall: Region, pencil: Pencil): Item[] {
  const width = Math.min(clearance, widestCasing);
  if (width < 10) return [];
  const whole = intersection(offsetMitred(hole, toHundredth(width)), wall);
  const frame = difference(whole, hole);
  return [
    ...pencil.region(castShadow(whole, casingDepth, wall), shade, 0.2),
    ...pencil.region(frame, timber),
    ...pencil.rim(frame, 3, timberEdge),
  ];
}

function leaf(hole: Region, box: RealBox, { hinge, handle }: Opening, pencil: Pencil): Item[] {
  const gap = 3;
  const door = inset({ ...box, bottom: box.bottom - 3 }, 28, 28);
  const panel = { ...inset(door, 90), bottom: door.bottom + 180, top: door.top - 110 };
  const latchIsRight = hinge !== 'right';
  const x = latchIsRight ? door.right - 55 : door.left + 55;
  const y = Math.min(box.bottom + (handle ?? 1050), door.top - 60);
  const to = latchIsRight ? x - 120 : x + 120;
  const hinges = [door.bottom + 230, door.top - 230].map((at) => {
    const side = latchIsRight ? door.left : door.right;
    return pencil.box({ left: side - 8, right: side + 8, bottom: at - 45, top: at + 45 }, timberEdge);
  });
  const isPlain = panel.right - panel.left < 150 || panel.top - panel.bottom < 400;
  return [
    ...pencil.region(hole, '#ddd6c7'),
    ...pencil.region(recessShadow(hole, 22), shade, 0.2),
    ...pencil.region(intersection(hole, boxRegion(door)), '#efeae0'),
    ...pencil.rim(intersection(hole, boxRegion(door)), gap, timberEdge),
    ...(isPlain
      ? []
      : [
          pencil.box(panel, '#e7e1d4'),
          ...pencil.region(recessShadow(boxRegion(panel), 10), shade, 0.16),
          ...pencil.rim(boxRegion(panel), 2.5, timberEdge, 0.8),
        ]),
    ...hinges,
    ...pencil.region(castShadow(boxRegion(lever(x, to, y)), 45, hole), shade, 0.2),
    pencil.disc(x, y, 22, '#9aa0a3'),
    pencil.box(lever(x, to, y), '#6b7377'),
  ];
}

function lever(x: Mm, to: Mm, y: Mm): RealBox {
  return { left: Math.min(x, to), right: Math.max(x, to), bottom: y - 9, top: y + 9 };
}

function pane(hole: Region, box: RealBox, { reveal }: Opening, pencil: Pencil): Item[] {
  const frame = 48;
  const glass = offsetMitred(hole, -toHundredth(frame));
  const { left, right, bottom, top } = inset(box, frame);
  const middle = (left + right) / 2;
  const slant = Math.min(right - left, top - bottom) * 0.32;
  const gleam = (from: Mm, width: Mm): Region => [
    {
      outer: [
        [left + from, bottom],
        [left + from + width, bottom],
        [left + from + width + slant, top],
        [left + from + slant, top],
      ].map(([x, y]) => ({ x: toHundredth(x!), y: toHundredth(y!) })),
      holes: [],
    },
  ];
  const wide = right - left;
  return [
    ...pencil.region(hole, timber),
    ...pencil.rim(hole, 4, timberEdge),
    ...pencil.region(glass, '#c6d8de'),
    ...pencil.region(intersection(gleam(wide * 0.12, wide * 0.14), glass), '#ffffff', 0.45),
    ...pencil.region(intersection(gleam(wide * 0.34, wide * 0.05), glass), '#ffffff', 0.45),
    ...(wide > 800 ? [pencil.box({ left: middle - 35, right: middle + 35, bottom, top }, timber)] : []),
    ...pencil.rim(glass, 3, timberEdge),
    ...pencil.region(recessShadow(hole, reveal || usualReveal.window!), shade, 0.18),
  ];
}

function sill({ left, right, bottom }: RealBox, wall: Region, pencil: Pencil): Item[] {
  const board = { left: left - 60, right: right + 60, bottom: bottom - 30, top: bottom };
  const region = intersection(boxRegion(board), wall);
  return [
    ...pencil.region(castShadow(region, 60, wall), shade, 0.2),
    ...pencil.region(region, timber),
    ...pencil.rim(region, 3, timberEdge),
  ];
}

function rimWithin(area: Region, by: Mm, width: Mm, pencil: Pencil): Item[] {
  return pencil.rim(offsetMitred(area, -toHundredth(by)), width, timberEdge, 0.8);
}

export function boxRegion({ left, bottom, right, top }: RealBox): Region {
  if (right - left < 0.02 || top - bottom < 0.02) return [];
  const [x0, y0, x1, y1] = [left, bottom, right, top].map(toHundredth) as [number, number, number, number];
  return [
    {
      outer: [
        { x: x0, y: y0 },
        { x: x1, y: y0 },
        { x: x1, y: y1 },
        { x: x0, y: y1 },
      ],
      holes: [],
    },
  ];
}

export function regionOf(ring: Ring): Region {
  return [{ outer: ring, holes: [] }];
}

export function realBox(ring: Ring): RealBox {
  const { left, bottom, right, top } = boxOf(ring);
  return { left: left / 100, bottom: bottom / 100, right: right / 100, top: top / 100 };
}
