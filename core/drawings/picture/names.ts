import { boxOfRegion, polygonArea, type Box, type Ring } from '../../geometry/polygon';
import { buildUpKind } from '../../job/build-up-kinds';
import type { WorkedWall } from '../../worked-out';
import type { ZoneNotice } from '../client-view-zones';
import { isWithin, labelWithin } from '../label-within';
import type { OnPaper } from '../marking-items';
import { boxOnPaper } from '../marking-items';
import type { Colour, Item, PaperPoint, Stroke, Text, TextHeight, TextMeasure } from '../page';
import { boxesOverlap, grownBox, type PaperBox } from '../paper';
import { offsetMitred } from '../../geometry/clip';
import { finishOfWall, finishOfZone, type Finish } from './finish';
import { ringsOf } from './pencil';
import { contrastOf } from './srgb';

/*
 * What the client is told in the picture: number and name of every zone, as the legend has them, and a broken line where
 * magnets hold.
 */

const ink = '#1f2d36';
const paper = '#fffdf7';

/** Dark or light, whichever is read better on a face. */
export function readableOn({ colour }: Finish): Colour {
  return contrastOf(colour, ink) >= contrastOf(colour, paper) ? 'ink' : 'paper';
}

/**
 * Names of zones beside them where the wall is free, else within them, else their numbers on a small disc: never none.
 *
 * @param taken what names keep off, hundredths
 */
export function nameZones(
  { survey, zones }: WorkedWall,
  notices: readonly ZoneNotice[],
  taken: readonly Box[],
  onPaper: OnPaper,
  measure: TextMeasure,
): Item[] {
  const { toPaper } = onPaper;
  const wall = { outer: fineRing(survey.outline.ring, toPaper), holes: [] };
  const things = taken.map((box) => boxOnPaper(box, toPaper));
  const areas = zones
    .filter(({ area }) => area.area.length > 0)
    .map(({ area }) => boxOnPaper(boxOfRegion(area.area), toPaper));
  const written: PaperBox[] = [];
  const onWall = readableOn(finishOfWall(survey.wall));
  return notices.flatMap((notice) => {
    const zone = zones.find(({ area }) => area === notice.zone)!;
    const box = boxOnPaper(boxOfRegion(notice.zone.area), toPaper);
    const face = readableOn(finishOfZone(notice.zone.zone, zone.buildUp.resolved, survey.wall));
    const isFree = (room: PaperBox) =>
      [...things, ...areas, ...written].every((one) => !boxesOverlap(one, room));
    const beside = captionsOf(notice).flatMap(([text, height]) =>
      placesBeside(box, measure(text, height, bold), height).map((at) => ({ text, height, at })),
    );
    for (const { text, height, at } of beside) {
      const room = roomOf(text, height, at, measure);
      if (!isWithin(grownBox(room, 0.6), wall) || !isFree(grownBox(room, 0.4))) continue;
      written.push(room);
      return [caption(text, height, at, onWall)];
    }
    const within = nameWithin(notice, [...things, ...written], face, toPaper, measure);
    if (within) written.push(within.box);
    return within?.texts ?? numberDisc(notice, box);
  });
}

const bold = { weight: 'semi-bold' } as const;

function captionsOf({ number, title, use }: ZoneNotice): [string, TextHeight][] {
  return [
    [`${number}  ${title}: ${use.charAt(0).toLowerCase()}${use.slice(1)}`, 2.5],
    [`${number}  ${title}`, 2.5],
  ];
}

/** Over the upper edge, under the lower one; from the left or up to the right. */
function placesBeside({ left, right, bottom, top }: PaperBox, width: number, height: number): PaperPoint[] {
  const [above, below] = [top + 1.6, bottom - 1.6 - height];
  return [
    { x: left, y: above },
    { x: right - width, y: above },
    { x: left, y: below },
    { x: right - width, y: below },
  ];
}

function roomOf(text: string, height: TextHeight, { x, y }: PaperPoint, measure: TextMeasure): PaperBox {
  // Descenders hang under the line.
  return { left: x, right: x + measure(text, height, bold), bottom: y - height * 0.3, top: y + height };
}

function caption(text: string, height: TextHeight, at: PaperPoint, colour: Colour): Text {
  return { kind: 'text', text, at, height, ...bold, colour };
}

function nameWithin(
  { zone, title, number }: ZoneNotice,
  obstacles: readonly PaperBox[],
  colour: Colour,
  toPaper: OnPaper['toPaper'],
  measure: TextMeasure,
) {
  const largest = [...zone.area].sort((a, b) => polygonArea(b) - polygonArea(a))[0]!;
  const area = {
    outer: fineRing(largest.outer, toPaper),
    holes: largest.holes.map((hole) => fineRing(hole, toPaper)),
  };
  for (const [text, height] of [
    [`${number}  ${title}`, 3.5],
    [`${number}  ${title}`, 2.5],
    [String(number), 3.5],
  ] as const) {
    const placed = labelWithin([{ text, height, ...bold, colour }], area, obstacles, [0], measure);
    if (placed) return placed;
  }
  return undefined;
}

function numberDisc({ number }: ZoneNotice, { left, top }: PaperBox): Item[] {
  const centre = { x: left + 3.4, y: top - 3.4 };
  return [
    { kind: 'circle', centre, radius: 2.8, width: 0.25, colour: 'ink', fill: 'white' },
    {
      kind: 'text',
      text: String(number),
      at: { x: centre.x, y: centre.y - 1.25 },
      height: 2.5,
      ...bold,
      anchor: 'middle',
      colour: 'ink',
    },
  ];
}

/** A broken line within which magnets hold: nobody sees that on a finished wall. */
export function magnetLines({ survey, zones }: WorkedWall, { toPaper, perMm }: OnPaper): Stroke[] {
  return zones.flatMap(({ area: { zone, area }, buildUp }) => {
    if (buildUpKind(zone.buildUp).magnetic === 'none') return [];
    const face = readableOn(finishOfZone(zone, buildUp.resolved, survey.wall));
    return offsetMitred(area, -Math.round((0.9 / perMm) * 100))
      .flatMap(ringsOf)
      .map((ring): Stroke => ({
        kind: 'stroke',
        points: ring.map(toPaper),
        closed: true,
        width: 0.25,
        line: 'dashed',
        colour: face === 'ink' ? 'red-lead' : 'wash',
      }));
  });
}

/** In hundredths of a paper millimetre. */
function fineRing(ring: Ring, toPaper: OnPaper['toPaper']): Ring {
  return ring.map((point) => {
    const { x, y } = toPaper(point);
    return { x: Math.round(x * 100), y: Math.round(y * 100) };
  });
}
