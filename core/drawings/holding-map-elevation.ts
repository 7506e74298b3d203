import { polygonArea, type Polygon } from '../geometry/polygon';
import { labelFitting, labelOpening, labelZone } from './elevation-labels';
import { fixingMarks } from './fixing-marks';
import { fittingSymbol } from './fitting-symbols';
import { keepOffLine, placeFirst, placeWithLeader, type LabelRoom } from './label-room';
import { openingSymbol } from './opening-symbols';
import type { Item, PaperPoint, Stroke, Text } from './page';
import { boxesOverlap, grownBox, type PaperBox } from './paper';
import { shortMark } from './panel-marks';
import { bandHatch, beneathWords, type PrintedBand } from './printed-bands';
import { boundsOf, boxWithin, coverRing, crossingsAt } from './ring-places';
import { clipItems, zoneOutline, type DrawElevation } from './setting-out-elevation';
import { breakStrokes, paperBox, paperRing, shows, type View } from './setting-out-view';
import { textBox, wrapText } from './text';

/**
 * The wall square-on with the bands of its holding map, each hatched and bounded, with its figures in it wherever there is
 * room; a band that has room for them nowhere has them once, beside it. `unmarked`: numbers of bands that found no place.
 */
export function drawBands(bands: readonly PrintedBand[]): DrawElevation {
  return (wall, view, room, { extensionLines, clipped }) => {
    const { survey, zones } = wall;
    const shown = survey.keepOuts.filter(({ bare }) => shows(view, bare.ring));
    const visible = zones.filter(({ area }) => shows(view, area.shape.ring));
    const panels = visible
      .flatMap(({ layout }) => layout?.panels ?? [])
      .filter(({ outline }) => shows(view, outline.outer));
    const areas = bands.map((band) => ({ band, polygons: largestFirst(band.region, view) }));
    const screws = (survey.wall.fixingPoints ?? []).filter(({ kind }) => kind === 'hole');
    const drillings = fixingMarks({ ...survey, wall: { ...survey.wall, fixingPoints: screws } }, view);

    const openings = survey.wall.openings.flatMap((opening) =>
      shown
        .filter(({ kind, id }) => kind === 'opening' && id === opening.id)
        .map((keepOut) => ({ opening, keepOut })),
    );
    const fittings = survey.wall.fittings.flatMap((fitting) =>
      shown
        .filter(({ kind, id }) => kind === 'fitting' && id === fitting.id)
        .map((keepOut) => ({ fitting, keepOut })),
    );
    const wallLine = closed(paperRing(view, survey.outline.ring), 0.7);
    const zoneLines = visible.flatMap((zone) => zoneOutline(zone, view));
    for (const { points } of [wallLine, ...zoneLines]) keepOffLine(room, points, true);
    for (const { keepOut } of fittings)
      for (const box of coverRing(paperRing(view, keepOut.bare.ring))) room.taken.add(box);
    for (const { points } of drillings) room.taken.add(boundsOf(points));

    const names = [
      ...openings.flatMap(({ opening, keepOut }) => labelOpening(opening, keepOut, view, room)),
      ...visible.flatMap((zone) => labelZone(zone, survey.outline, view, room, false)),
    ];
    const figures = figuresIn(areas, room);
    const after = [
      ...fittings.flatMap(({ fitting, keepOut }) => labelFitting(fitting, keepOut, view, room)),
      ...panels.flatMap((panel) => markOf(shortMark(panel), ringsOf(panel.outline, view), room)),
    ];

    const drawing: Item[] = [
      ...areas.flatMap(({ band, polygons }) => bandHatch(band, polygons.flat())),
      ...areas.flatMap(({ polygons }) => polygons.flat().map((ring) => closed(ring, 0.25))),
      ...panels.flatMap(({ outline }) =>
        ringsOf(outline, view).map((ring): Stroke => ({ ...closed(ring, 0.25), colour: 'red-lead' })),
      ),
      ...zoneLines,
      ...openings.flatMap(({ opening, keepOut }) => openingSymbol(opening, keepOut, view)),
      ...fittings.flatMap(({ fitting, keepOut }) => fittingSymbol(fitting, keepOut, view)),
      ...drillings,
      wallLine,
    ];
    const inPart = clipped ? clipItems(drawing, paperBox(view, view.shown)) : drawing;
    const broken = [...extensionLines, ...inPart].flatMap((item): Item[] =>
      item.kind === 'stroke' ? breakStrokes([item], room.textBoxes) : [item],
    );
    return { items: [...broken, ...names, ...figures.items, ...after], unmarked: figures.unmarked };
  };
}

type Rings = readonly (readonly PaperPoint[])[];

interface BandOnPaper {
  readonly band: PrintedBand;
  /** Each as its rings, those of the largest first. */
  readonly polygons: readonly Rings[];
}

function largestFirst(region: readonly Polygon[], view: View): Rings[] {
  return region
    .filter(({ outer }) => shows(view, outer))
    .map((polygon) => ({ polygon, area: polygonArea(polygon) }))
    .sort((a, b) => b.area - a.area)
    .map(({ polygon }) => ringsOf(polygon, view));
}

function ringsOf({ outer, holes }: Polygon, view: View): Rings {
  return [outer, ...holes].map((ring) => paperRing(view, ring));
}

/** Inside first for all, so that no leader takes the place of another band's own figures. */
function figuresIn(areas: readonly BandOnPaper[], room: LabelRoom): { items: Item[]; unmarked: string[] } {
  const items: Item[] = [];
  const homeless = areas.filter(({ band, polygons }) => {
    const texts = polygons.flatMap((rings) => labelInside(band, rings, room));
    items.push(...texts);
    return texts.length === 0 && polygons.length > 0;
  });
  const covered = areas.flatMap(({ polygons }) => polygons.map(([outer]) => boundsOf(outer!)));
  const unmarked: string[] = [];
  for (const { band, polygons } of homeless) {
    const aside = labelBeside(band, polygons, room, covered);
    items.push(...aside);
    if (aside.length === 0) unmarked.push(`(${band.number})`);
  }
  return { items, unmarked };
}

/** The words, large where there is room, and under them the pull and which band it is; the words alone where that is all. */
function labelInside(band: PrintedBand, rings: Rings, room: LabelRoom): Text[] {
  const stretches = stretchesOf(rings);
  for (const height of [5, 3.5, 2.5] as const) {
    for (const isWhole of height > 2.5 ? [true] : [true, false]) {
      for (const stretch of stretches) {
        const texts = linesIn(stretch, band, height, isWhole, room);
        if (texts.length === 0) continue;
        const boxes = texts.map((text) => grownBox(textBox(text, room.measure), 0.8));
        if (!boxes.every((box) => isFree(box, room) && boxWithin(box, rings))) continue;
        for (const box of boxes) {
          room.taken.add(box);
          room.textBoxes.push(box);
        }
        return texts;
      }
    }
  }
  return [];
}

/** None where they are too long. */
function linesIn(
  { left, right, y }: Stretch,
  band: PrintedBand,
  height: 5 | 3.5 | 2.5,
  isWhole: boolean,
  { measure }: LabelRoom,
): Text[] {
  const lines = (text: string, size: 5 | 3.5 | 2.5, weight: 'regular' | 'semi-bold', within: number) => {
    const style = { face: 'condensed', weight } as const;
    const wrapped = text === '' ? [] : wrapText(text, within, size, style, measure);
    // Not where a word would have to be broken.
    return wrapped.join(' ') === text
      ? wrapped.map((line) => ({ text: line, height: size, ...style }))
      : null;
  };
  const words = lines(unbroken(band.words), height, 'semi-bold', right - left - 1.8);
  const beneath = lines(isWhole ? beneathWords(band) : '', 2.5, 'regular', right - left - 3);
  if (!words || !beneath) return [];
  const all = [...words, ...beneath];
  const step = (i: number) =>
    i === 0 ? all[0]!.height : all[i]!.height + (i < words.length ? 0.45 * height : 1.7);
  const whole = all.reduce((sum, _, i) => sum + step(i), 0) + (beneath.length > 0 ? 1.1 : 0);
  let foot = y + whole / 2;
  return all.map((line, i): Text => {
    foot -= step(i) + (i === words.length ? 1.1 : 0);
    return { kind: 'text', ...line, anchor: 'middle', at: { x: (left + right) / 2, y: foot } };
  });
}

/** `100 g` and `if tested` break only between them. */
function unbroken(words: string): string {
  return words.replace(/(?<=\d|if) (?=g\b|oz\b|lb\b|tested)/g, '\u00A0');
}

/** Outside all bands if there is room near, from a place near the rim of them. */
function labelBeside(
  band: PrintedBand,
  polygons: readonly Rings[],
  room: LabelRoom,
  covered: readonly PaperBox[],
): Item[] {
  const targets = polygons
    .flatMap((rings) => stretchesOf(rings).map(({ left, right, y }) => ({ x: (left + right) / 2, y })))
    .filter((target) => isFree(grownBox(pointBox(target), 0.3), room))
    .map((target) => ({ target, depth: depthIn(target, covered) }))
    .sort((a, b) => a.depth - b.depth)
    .slice(0, 12);
  const outside: LabelRoom = {
    ...room,
    taken: {
      add: room.taken.add,
      isFree: (box) => room.taken.isFree(box) && !covered.some((other) => boxesOverlap(other, box)),
    },
  };
  for (const within of [outside, room]) {
    for (const { target } of targets) {
      const text: Text = {
        kind: 'text',
        text: `${band.words}, ${beneathWords(band)}`,
        height: 2.5,
        face: 'condensed',
        weight: 'semi-bold',
        at: target,
      };
      const aside = placeWithLeader(within, text, target);
      if (aside) return [...aside.leader, aside.text];
    }
  }
  return [];
}

/** How far a place is from the nearest side of the box about all bands that lie about it. */
function depthIn({ x, y }: PaperPoint, boxes: readonly PaperBox[]): number {
  const left = Math.min(...boxes.map((box) => box.left));
  const right = Math.max(...boxes.map((box) => box.right));
  const bottom = Math.min(...boxes.map((box) => box.bottom));
  const top = Math.max(...boxes.map((box) => box.top));
  return Math.min(x - left, right - x, y - bottom, top - y);
}

/** A level stretch inside an area. */
interface Stretch {
  readonly left: number;
  readonly right: number;
  readonly y: number;
}

/** The widest at some heights, half way up first. */
function stretchesOf(rings: Rings): Stretch[] {
  const { bottom, top } = boundsOf(rings[0]!);
  const inner = rings.slice(1).flatMap((ring) => ring.map(({ y }) => y));
  const ends =
    inner.length > 0
      ? [(bottom + Math.min(...inner)) / 2, (top + Math.max(...inner)) / 2]
      : [bottom + (top - bottom) * 0.1];
  const rows = [0.5, 0.35, 0.65, 0.2, 0.8].map((share) => bottom + (top - bottom) * share);
  return [...rows, ...ends].flatMap((y) => {
    const xs = crossingsAt(rings, y);
    const found = xs.flatMap((left, i): Stretch[] =>
      i % 2 === 0 && i + 1 < xs.length ? [{ left, right: xs[i + 1]!, y }] : [],
    );
    return found.sort((a, b) => b.right - b.left - (a.right - a.left)).slice(0, 2);
  });
}

function pointBox({ x, y }: PaperPoint): PaperBox {
  return { left: x, right: x, bottom: y, top: y };
}

/** `07` in the upper left corner of a panel, by which the table and the setting-out sheet call it; left out where it has no room. */
function markOf(mark: string, rings: Rings, room: LabelRoom): Text[] {
  const { left, top, right } = boundsOf(rings[0]!);
  const base = { kind: 'text', text: mark, height: 2.5, face: 'condensed', colour: 'red-lead' } as const;
  const candidates = [5.4, 7, 9].flatMap((down): Text[] => [
    { ...base, at: { x: left + 2.8, y: top - down } },
    { ...base, at: { x: right - 2.8, y: top - down }, anchor: 'end' },
  ]);
  const text = placeFirst(room, candidates, (box) => boxWithin(box, rings));
  return text ? [text] : [];
}

function isFree(box: PaperBox, { bounds, taken }: LabelRoom): boolean {
  return (
    bounds.left <= box.left &&
    box.right <= bounds.right &&
    bounds.bottom <= box.bottom &&
    box.top <= bounds.top &&
    taken.isFree(box)
  );
}

function closed(points: readonly PaperPoint[], width: Stroke['width']): Stroke {
  return { kind: 'stroke', points, closed: true, width };
}
