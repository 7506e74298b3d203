import { describe, expect, it } from 'vitest';
import { boxOf, polygonArea, rectangleOfBox } from '../../core/geometry/polygon';
import { intersection } from '../../core/geometry/clip';
import { coursesIn, leftEdgesIn } from '../../core/panels/grid';
import { lostToSquare } from '../../core/panels/lost-to-square';
import { findRival, type PlainFigures, type PlainQuestion } from './brute-force';
import { rectilinearWall, slopingWall, type RandomWall } from './random-walls';
import { plainQuestionOf, rivalOf, searchWall } from './search-wall';
import { mmRectangle, zoneArea } from './zones-by-hand';

/** Negative if the first is the better. */
function compareFigures(a: PlainFigures, b: PlainFigures): number {
  return a.slivers - b.slivers || a.stockSheets - b.stockSheets || a.cutPanels - b.cutPanels;
}

/** Every cell by the clipper. */
function figuresByClipper(question: PlainQuestion, x: number, y: number): PlainFigures {
  const { area, width, height, pitchX, pitchY, stagger, leastWidth, countSheets } = question;
  const grid = { start: { x, y }, width, height, pitchX, pitchY, stagger };
  const box = boxOf(area.flatMap(({ outer }) => outer));
  const { first, last } = coursesIn(grid, box);
  const pieces = [];
  let slivers = 0;
  for (let course = first; course <= last; course++) {
    const bottom = y + course * pitchY;
    for (const left of leftEdgesIn(grid, course, box)) {
      const cell = rectangleOfBox({ left, bottom, right: left + width, top: bottom + height });
      for (const piece of intersection(area, [cell])) {
        if (polygonArea(piece) <= 1000) continue;
        if (lostToSquare(piece, leastWidth)) slivers++;
        const size = boxOf(piece.outer);
        pieces.push({
          width: size.right - size.left,
          height: size.top - size.bottom,
          area: polygonArea(piece),
          isWhole: polygonArea(piece) === width * height,
          isSliver: () => false,
        });
      }
    }
  }
  const cut = pieces.filter(({ isWhole }) => !isWhole);
  return { slivers, stockSheets: pieces.length - cut.length + countSheets(cut), cutPanels: cut.length };
}

describe('every start of a raster, the plain way', () => {
  it.each([0, 2, 22, 64].map(rectilinearWall).concat([2, 5, 11, 38].map(slopingWall)))(
    'is what the clipper makes of it: $name',
    (wall) => {
      const question = plainQuestionOf(wall);
      const step = Math.round(question.pitchX / 4);
      const rival = findRival(question, { slivers: 99, stockSheets: 0, cutPanels: 0 }, step)!;
      const { x, y } = rival.start;
      expect(figuresByClipper(question, x, y)).toEqual({
        slivers: rival.slivers,
        stockSheets: rival.stockSheets,
        cutPanels: rival.cutPanels,
      });
      for (let atX = 0; atX < question.pitchX; atX += step) {
        for (let n = 0; n * step < question.pitchY; n++) {
          const { bottom, pitchY } = question;
          const atY = bottom - ((((bottom - n * step) % pitchY) + pitchY) % pitchY);
          expect(compareFigures(rival, figuresByClipper(question, atX, atY))).toBeLessThanOrEqual(0);
        }
      }
    },
  );
});

describe('the best start against every start on a raster of 1 mm, nested by the cutter', () => {
  it.each([2, 3, 16, 29, 53, 54, 58, 61].map(rectilinearWall).concat([2, 6].map(slopingWall)))(
    'is beaten by none: $name',
    (wall) => {
      const { figures } = searchWall(wall);
      expect(rivalOf(wall, figures)).toBeUndefined();
    },
  );
});

/** A zone as wide and high as given, laid from sheets of 400 × 700 mm in courses shifted by a quarter. */
const threeToASheet: RandomWall = {
  name: 'three cut panels to a stock sheet',
  area: zoneArea(mmRectangle([0, 0, 911, 1185]), [], { stagger: 0.25 }),
  width: 400,
  height: 700,
  method: 'edge-to-edge',
  kerf: 0,
};

/**
 * Walls on which a search was beaten that looked at events alone, or nested in two ways alone, or nested wherever
 * anything came to fit and so never reached the start that mattered, or took panels for the same all along an event
 * though a slope parts them; with what a start of the raster reaches.
 */
const onceBeaten: readonly { readonly wall: RandomWall; readonly rival: PlainFigures }[] = [
  { wall: threeToASheet, rival: { slivers: 0, stockSheets: 4, cutPanels: 8 } },
  { wall: rectilinearWall(18), rival: { slivers: 0, stockSheets: 9, cutPanels: 12 } },
  { wall: rectilinearWall(32), rival: { slivers: 0, stockSheets: 4, cutPanels: 5 } },
  { wall: rectilinearWall(36), rival: { slivers: 0, stockSheets: 25, cutPanels: 22 } },
  { wall: rectilinearWall(46), rival: { slivers: 0, stockSheets: 11, cutPanels: 20 } },
  { wall: rectilinearWall(50), rival: { slivers: 2, stockSheets: 6, cutPanels: 12 } },
  { wall: rectilinearWall(70), rival: { slivers: 2, stockSheets: 13, cutPanels: 18 } },
  { wall: rectilinearWall(76), rival: { slivers: 0, stockSheets: 4, cutPanels: 6 } },
  { wall: rectilinearWall(172), rival: { slivers: 1, stockSheets: 7, cutPanels: 13 } },
  { wall: rectilinearWall(178), rival: { slivers: 1, stockSheets: 10, cutPanels: 14 } },
  { wall: rectilinearWall(376), rival: { slivers: 1, stockSheets: 5, cutPanels: 11 } },
  { wall: slopingWall(4), rival: { slivers: 0, stockSheets: 13, cutPanels: 13 } },
  { wall: slopingWall(7), rival: { slivers: 0, stockSheets: 7, cutPanels: 14 } },
  { wall: slopingWall(9), rival: { slivers: 0, stockSheets: 5, cutPanels: 12 } },
  { wall: slopingWall(16), rival: { slivers: 1, stockSheets: 9, cutPanels: 15 } },
  { wall: slopingWall(27), rival: { slivers: 0, stockSheets: 11, cutPanels: 13 } },
  { wall: slopingWall(30), rival: { slivers: 2, stockSheets: 4, cutPanels: 9 } },
];

describe('the best start of walls on which it was once beaten', () => {
  it.each(onceBeaten)('is as good as the raster: $wall.name', ({ wall, rival }) => {
    expect(compareFigures(searchWall(wall).figures, rival)).toBeLessThanOrEqual(0);
  });
});
