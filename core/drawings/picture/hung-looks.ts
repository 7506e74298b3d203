import type { ReadyHungKind } from '../../job/hung-kinds';
import type { PictureColour } from '../page';
import { clipboard, frame, ink, map, poster, print, steel, woodEdge, type HungLook } from './flat-looks';
import { inset, type Pencil, type RealBox } from './pencil';

type Draw = (box: RealBox, pencil: Pencil) => HungLook;

const wood: PictureColour = '#d0ab77';
const leafGreen: PictureColour = '#5d7f57';

export const hungLooks: Readonly<Record<ReadyHungKind, Draw>> = {
  print,
  poster,
  clipboard,
  map,
  shelf,
  planter,
  'tool-rack': toolRack,
  'letter-rail': letterRail,
  'coat-hook': hook,
  'bicycle-hook': hook,
  'game-piece': gamePiece,
};

/** The board at the foot, its upright behind, and what may stand on it. */
function shelf(box: RealBox, pencil: Pencil): HungLook {
  const { left, right, bottom } = box;
  const [wide, high] = [right - left, box.top - bottom];
  const thick = Math.min(22, high * 0.3);
  const board = { left, right, bottom, top: bottom + thick };
  const back = { left, right, bottom: board.top, top: bottom + high };
  const tins = [0.08, 0.26, 0.44].map((share, i) => ({
    left: left + wide * share,
    right: left + wide * (share + 0.14),
    bottom: board.top,
    top: board.top + (high - thick) * [0.86, 0.7, 0.86][i]!,
  }));
  const colours: PictureColour[] = ['#31413f', '#b5401c', '#d9a441'];
  return {
    casts: [box],
    body: [
      pencil.box(back, '#c39d68'),
      ...tins.flatMap((tin, i) => [
        pencil.box(tin, colours[i]!),
        pencil.box({ ...tin, bottom: tin.bottom + 12, top: tin.top - 14 }, '#efe9dc', 0.85),
      ]),
      pencil.box(board, wood),
      frame(board, 2, woodEdge, pencil),
    ],
  };
}

function planter(box: RealBox, pencil: Pencil): HungLook {
  const { left, right, bottom, top } = box;
  const [wide, high] = [right - left, top - bottom];
  const rim = bottom + high * 0.55;
  const pot: [number, number][] = [
    [left + wide * 0.14, bottom],
    [right - wide * 0.14, bottom],
    [right - wide * 0.02, rim],
    [left + wide * 0.02, rim],
  ];
  const leaves = [-0.42, -0.24, -0.08, 0.08, 0.24, 0.42].map((lean, i) => {
    const foot = left + wide * (0.5 + lean * 0.5);
    const tip: [number, number] = [left + wide * (0.5 + lean * 1.1), top - high * 0.1 * (i % 2)];
    const half = wide * 0.055;
    const middle: [number, number] = [(foot + tip[0]) / 2, rim + (tip[1] - rim) * 0.55];
    return pencil.area(
      [[foot, rim], [middle[0] - half, middle[1]], tip, [middle[0] + half, middle[1]]],
      i % 2 === 0 ? leafGreen : '#7a9b6d',
    );
  });
  return {
    casts: [{ left: left + wide * 0.08, right: right - wide * 0.08, bottom, top: rim }],
    body: [
      ...leaves,
      pencil.area(pot, '#c98b62'),
      pencil.box({ left, right, bottom: rim - high * 0.08, top: rim }, '#b97a52'),
    ],
  };
}

const gripColours: readonly PictureColour[] = [ink, '#8a4a2b', '#b5401c'];

/** A bar with pegs, and on them a few tools of a print shop. */
function toolRack(box: RealBox, pencil: Pencil): HungLook {
  const { left, right, top, bottom } = box;
  const [wide, high] = [right - left, top - bottom];
  const bar = { left, right, top, bottom: top - high * 0.26 };
  const handles = [0.1, 0.27, 0.44, 0.61, 0.78, 0.92].map((share, i) => {
    const x = left + wide * share;
    const half = Math.min(wide * 0.022, 12);
    const neck = bar.bottom - high * 0.22;
    return [
      pencil.box({ left: x - half * 0.4, right: x + half * 0.4, top: bar.bottom, bottom: neck }, steel),
      pencil.box(
        { left: x - half, right: x + half, top: neck, bottom: bottom + high * 0.06 * (i % 3) },
        gripColours[i % 3]!,
      ),
    ];
  });
  return {
    casts: [bar],
    body: [...handles.flat(), pencil.box(bar, wood), frame(bar, 2, woodEdge, pencil)],
  };
}

function letterRail(box: RealBox, pencil: Pencil): HungLook {
  const { left, right, top, bottom } = box;
  const [wide, high] = [right - left, top - bottom];
  const ledge = bottom + high * 0.3;
  const count = Math.max(3, Math.floor(wide / (high * 0.75)));
  const step = wide / count;
  const sorts = Array.from({ length: count }, (_, i) => i)
    .filter((i) => i % 5 !== 4)
    .map((i) =>
      pencil.box(
        {
          left: left + i * step + step * 0.1,
          right: left + (i + 1) * step - step * 0.1,
          bottom: ledge,
          top: top - high * 0.05 * (i % 3),
        },
        ['#59656b', '#747f84', '#474f54'][i % 3] as PictureColour,
      ),
    );
  return {
    casts: [{ left, right, bottom, top: ledge }],
    body: [...sorts, pencil.box({ left, right, bottom, top: ledge }, wood)],
  };
}

function hook(box: RealBox, pencil: Pencil): HungLook {
  const { left, right, top, bottom } = box;
  const [wide, high] = [right - left, top - bottom];
  const middle = (left + right) / 2;
  const base = { left, right, top, bottom: top - high * 0.55 };
  const arm = { left: middle - wide * 0.14, right: middle + wide * 0.14, top: top - high * 0.3, bottom };
  return {
    casts: [base, arm],
    body: [
      pencil.box(base, '#a9b0b3'),
      frame(base, 1.5, '#5d6870', pencil),
      pencil.box(arm, '#5d6870'),
      pencil.disc(middle, bottom + wide * 0.2, wide * 0.2, '#434c51'),
    ],
  };
}

function gamePiece(box: RealBox, pencil: Pencil): HungLook {
  const radius = Math.min(box.right - box.left, box.top - box.bottom) / 2;
  const [x, y] = [(box.left + box.right) / 2, (box.bottom + box.top) / 2];
  return {
    casts: [inset(box, radius * 0.25)],
    body: [
      pencil.disc(x, y, radius, '#b5401c'),
      pencil.disc(x - radius * 0.12, y + radius * 0.12, radius * 0.62, '#cf6a46'),
    ],
  };
}
