import type { Colour, Fill, PaperPoint } from './page';
import type { Mm } from '../units';

/** Real height of the figure in mm; 1,75 m is near the mean stature of men in ANSUR II (1756 mm). */
export const figureHeight: Mm = 1750;

/** Real width that the figure needs, arms included, mm. */
export const figureWidth: Mm = 560;

/*
 * Our own drawing: somebody at ease, weight on one leg, seen from the back as whoever looks at a wall is.
 * mm from the point between the feet; smooth curves pass through every point.
 */
const body: readonly (readonly [number, number])[] = [
  [-48, 1512],
  [-52, 1478],
  [-110, 1448],
  [-192, 1418],
  [-226, 1340],
  [-238, 1220],
  [-252, 1100],
  [-250, 980],
  [-246, 880],
  [-238, 806],
  [-214, 776],
  [-196, 800],
  [-194, 868],
  [-198, 960],
  [-192, 1060],
  [-178, 1150],
  [-166, 1210],
  [-160, 1120],
  [-168, 1000],
  [-178, 900],
  [-174, 780],
  [-158, 620],
  [-146, 480],
  [-138, 330],
  [-118, 160],
  [-112, 80],
  [-138, 36],
  [-150, 8],
  [-100, 0],
  [-52, 4],
  [-46, 60],
  [-44, 180],
  [-34, 380],
  [-22, 560],
  [-6, 760],
  [8, 560],
  [26, 380],
  [46, 180],
  [56, 60],
  [66, 4],
  [118, 0],
  [172, 8],
  [166, 34],
  [132, 84],
  [132, 170],
  [146, 330],
  [150, 480],
  [158, 620],
  [172, 780],
  [176, 900],
  [168, 1000],
  [160, 1120],
  [166, 1210],
  [178, 1150],
  [196, 1060],
  [204, 960],
  [204, 868],
  [210, 800],
  [228, 778],
  [250, 810],
  [256, 880],
  [258, 980],
  [256, 1100],
  [240, 1220],
  [226, 1340],
  [192, 1418],
  [110, 1448],
  [56, 1478],
  [52, 1512],
];

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
    const wide = 82 + 6 * Math.sin(turn);
    return [2 + wide * Math.cos(turn), 1632 + 118 * Math.sin(turn)];
  });
  return [
    { kind: 'fill', rings: [smoothRing(body).map(place)], colour },
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
