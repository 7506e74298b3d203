import type { Ring } from '../geometry/polygon';
import { boxOf } from '../geometry/polygon';
import type { KeepOut, SurveyedWall } from '../survey/surveyed-wall';
import type { Item, PaperPoint, Stroke } from './page';
import type { PaperBox } from './paper';

/** From the wall's frame (hundredths) to paper (mm). */
export type ToPaper = (point: { readonly x: number; readonly y: number }) => PaperPoint;

/** The wall's face and edge, its openings above it; what stands on it comes later, over the zones. */
export function drawBareWall(survey: SurveyedWall, toPaper: ToPaper): Item[] {
  const ring = survey.outline.ring.map(toPaper);
  return [
    { kind: 'fill', rings: [ring], colour: 'paper' },
    { kind: 'stroke', points: ring, closed: true, width: 0.5, colour: 'ink' },
  ];
}

/** Doors, windows, arches and niches, and every fitting: quiet, to be known again and no more. */
export function drawOpeningsAndFittings(survey: SurveyedWall, toPaper: ToPaper): Item[] {
  return survey.keepOuts.flatMap((keepOut) => {
    const ring = keepOut.bare.ring;
    const inner = detailOf(keepOut, survey, toPaper);
    const opening = keepOut.kind === 'opening';
    return [
      { kind: 'fill', rings: [ring.map(toPaper)], colour: 'white' },
      {
        kind: 'stroke',
        points: ring.map(toPaper),
        closed: true,
        width: opening ? 0.35 : 0.18,
        colour: opening ? 'ink' : 'soft',
      },
      ...inner,
    ] satisfies Item[];
  });
}

function detailOf(keepOut: KeepOut, { wall }: SurveyedWall, toPaper: ToPaper): Item[] {
  const box = paperBox(keepOut.bare.ring, toPaper);
  if (keepOut.kind === 'opening') {
    const opening = wall.openings.find(({ id }) => id === keepOut.id);
    if (opening?.kind === 'door') return doorDetail(box, opening.hinge, toPaper);
    if (opening?.kind === 'window') return windowDetail(box);
    if (opening?.kind === 'niche') return [frame(inset(box, 1.2))].flat();
    return [];
  }
  const kind = wall.fittings.find(({ id }) => id === keepOut.id)?.kind;
  const middle = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
  const [width, height] = [box.right - box.left, box.top - box.bottom];
  if (kind === 'socket') {
    // One outlet, or two side by side where the plate is about twice as wide as high.
    const outlets = width > 1.5 * height ? [-0.25, 0.25] : [0];
    return outlets.map((share) => ({
      kind: 'circle',
      centre: { x: middle.x + share * width, y: middle.y },
      radius: Math.min(width / outlets.length, height) * 0.28,
      width: 0.18,
      colour: 'soft',
    }));
  }
  if (kind === 'switch') return [line([middle.x, box.bottom + height / 4], [middle.x, box.top - height / 4])];
  if (kind === 'radiator') {
    const fins = Math.max(2, Math.floor(width / 1.6));
    return Array.from({ length: fins - 1 }, (_, i) => {
      const x = box.left + ((i + 1) * width) / fins;
      return line([x, box.bottom], [x, box.top]);
    });
  }
  return [];
}

function doorDetail(box: PaperBox, hinge: 'left' | 'right' | undefined, toPaper: ToPaper): Item[] {
  const leaf = { ...inset(box, 0.9), bottom: box.bottom };
  const handleOnRight = hinge !== 'right';
  const mmReal = toPaper({ x: 100, y: 0 }).x - toPaper({ x: 0, y: 0 }).x;
  const x = handleOnRight ? leaf.right - 1.6 : leaf.left + 1.6;
  const y = Math.min(box.bottom + 1050 * mmReal, box.top - 1.5);
  const inward = handleOnRight ? -1 : 1;
  return [...frame(leaf), line([x, y], [x + inward * 1.8, y], 0.35)];
}

function windowDetail(box: PaperBox): Item[] {
  const pane = inset(box, 1);
  const x = (pane.left + pane.right) / 2;
  const sill = line([box.left - 1, box.bottom], [box.right + 1, box.bottom], 0.5);
  const bar = pane.right - pane.left > 12 ? [line([x, pane.bottom], [x, pane.top])] : [];
  return [...frame(pane), ...bar, sill];
}

function frame({ left, bottom, right, top }: PaperBox): Stroke[] {
  if (right - left < 1 || top - bottom < 1) return [];
  const points = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return [{ kind: 'stroke', points, closed: true, width: 0.18, colour: 'soft' }];
}

function line(
  from: readonly [number, number],
  to: readonly [number, number],
  width: 0.18 | 0.35 | 0.5 = 0.18,
): Stroke {
  const points = [from, to].map(([x, y]) => ({ x, y }));
  return { kind: 'stroke', points, width, colour: 'soft' };
}

function inset({ left, bottom, right, top }: PaperBox, by: number): PaperBox {
  return { left: left + by, bottom: bottom + by, right: right - by, top: top - by };
}

function paperBox(ring: Ring, toPaper: ToPaper): PaperBox {
  const box = boxOf(ring);
  const low = toPaper({ x: box.left, y: box.bottom });
  const high = toPaper({ x: box.right, y: box.top });
  return { left: low.x, bottom: low.y, right: high.x, top: high.y };
}
