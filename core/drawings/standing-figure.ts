import type { Colour, Fill, PaperPoint } from './page';
import type { Mm } from '../units';

/** Real height of the figure in mm; 1,75 m is near the median stature of men in ANSUR II (1755 mm). */
export const figureHeight: Mm = 1750;

/** Real width that the figure needs, arms included, mm. */
export const figureWidth: Mm = 560;

/*
 * Our own drawing: somebody in a coat, hands in the pockets, looking at the wall as whoever reads the sheet does.
 * mm from the point between the feet; smooth curves pass through every point.
 */
const body: readonly (readonly [number, number])[] = [
  [-48, 1512],
  [-56, 1474],
  [-128, 1444],
  [-202, 1406],
  [-232, 1330],
  [-248, 1210],
  [-266, 1100],
  [-252, 1010],
  [-214, 938],
  [-198, 880],
  [-202, 760],
  [-214, 640],
  [-224, 566],
  [-220, 556],
  [-128, 546],
  [-122, 536],
  [-114, 300],
  [-106, 100],
  [-126, 44],
  [-142, 12],
  [-128, 1],
  [-56, 1],
  [-46, 14],
  [-42, 90],
  [-36, 300],
  [-24, 520],
  [0, 548],
  [22, 520],
  [38, 300],
  [54, 90],
  [60, 14],
  [70, 1],
  [150, 1],
  [166, 12],
  [154, 42],
  [126, 98],
  [124, 300],
  [126, 536],
  [132, 546],
  [220, 556],
  [224, 566],
  [214, 640],
  [202, 760],
  [198, 880],
  [214, 938],
  [254, 1010],
  [270, 1100],
  [248, 1210],
  [232, 1330],
  [202, 1406],
  [128, 1444],
  [56, 1474],
  [52, 1512],
];

/** Light between arm and coat. */
const gaps: readonly (readonly (readonly [number, number])[])[] = [-1, 1].map((side) => [
  [side * 196, 1190],
  [side * 224, 1100],
  [side * 208, 1020],
  [side * 188, 1000],
  [side * 182, 1090],
]);

/**
 * A standing person of 1,75 m as one quiet fill.
 *
 * @param foot the point on paper between the feet
 * @param mmPerPaperMm real mm for one mm on paper
 */
export function standingFigure(foot: PaperPoint, mmPerPaperMm: number, colour: Colour): Fill[] {
  const place = ([x, y]: readonly [number, number]): PaperPoint => ({
    x: foot.x + x / mmPerPaperMm,
    y: foot.y + y / mmPerPaperMm,
  });
  const head = Array.from({ length: 48 }, (_, i): [number, number] => {
    const turn = (i * Math.PI) / 24;
    // Fuller above than below, as a head is.
    const wide = 80 + 6 * Math.sin(turn);
    return [2 + wide * Math.cos(turn), 1630 + 120 * Math.sin(turn)];
  });
  return [
    { kind: 'fill', rings: [body, ...gaps].map((ring) => smoothRing(ring).map(place)), colour },
    { kind: 'fill', rings: [head.map(place)], colour },
  ];
}

/** Points on the closed Catmull-Rom curve (uniform) through all points, six to each span. */
function smoothRing(points: readonly (readonly [number, number])[]): [number, number][] {
  const at = (i: number) => points[(i + points.length) % points.length]!;
  return points.flatMap((_, i) => {
    const [p0, p1, p2, p3] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    return [0, 1, 2, 3, 4, 5].map((step): [number, number] => {
      const t = step / 6;
      const along = (k: 0 | 1) =>
        0.5 *
        (2 * p1[k] +
          (p2[k] - p0[k]) * t +
          (2 * p0[k] - 5 * p1[k] + 4 * p2[k] - p3[k]) * t * t +
          (3 * p1[k] - p0[k] - 3 * p2[k] + p3[k]) * t * t * t);
      return [along(0), along(1)];
    });
  });
}
