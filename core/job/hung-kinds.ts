import { freshId } from './changes';
import { findKind } from './kind-names';
import type { HungItem, HungKind, Use } from './hung-schema';
import type { Job, Wall } from './schema';
import type { MmPoint } from './shape';

/*
 * What a new hung item is until somebody measures and weighs it. Sizes are common practice, no source; weights are what
 * such things weigh about (from memory) and are there to be replaced. Lengths in mm, weights in kg.
 */

export const readyHungKinds = [
  'print',
  'poster',
  'clipboard',
  'map',
  'shelf',
  'planter',
  'tool-rack',
  'letter-rail',
  'coat-hook',
  'bicycle-hook',
  'game-piece',
] as const;
export type ReadyHungKind = (typeof readyHungKinds)[number];

/** Size, weight and magnets of a new item; `HungItem` says what each means. */
export type HungFigures = HungKind['item'];

interface ReadyKind {
  /** Within a sentence. */
  readonly words: string;
  readonly figures: HungFigures;
}

/** Id of the magnet that new items have; `core/holding/magnet.ts` lists it. */
export const usualMagnet = 'N42-20x5';
const inset = 20;

const kinds: Readonly<Record<ReadyHungKind, ReadyKind>> = {
  print: flat('print', 420, 594, 0.15, 1, corners(420, 594), 'light-at-reach'),
  poster: flat('poster', 594, 841, 0.2, 1, corners(594, 841), 'light-at-reach'),
  clipboard: flat('clipboard', 230, 320, 0.35, 8, [[115, 300]], 'handled'),
  map: flat('map', 1000, 700, 0.6, 2, row(1000, 680, 4), 'light-at-reach'),
  shelf: {
    words: 'shelf',
    figures: {
      width: 400,
      height: 120,
      depth: 120,
      weight: 0.8,
      load: { weight: 2, reach: 120 },
      magnets: { magnet: 'N42-30x10', places: row(400, 100, 4) },
      restsOnWall: true,
      use: 'could-hurt',
    },
  },
  planter: {
    words: 'planter',
    figures: {
      width: 200,
      height: 180,
      depth: 150,
      weight: 0.6,
      load: { weight: 2.5, reach: 80 },
      magnets: {
        magnet: 'N42-30x10',
        places: [...row(200, 160, 2), ...row(200, 20, 2)],
      },
      restsOnWall: true,
      use: 'could-hurt',
    },
  },
  'tool-rack': {
    words: 'tool rack',
    figures: {
      width: 500,
      height: 120,
      depth: 40,
      weight: 0.7,
      load: { weight: 1.5, reach: 40 },
      magnets: { magnet: 'N42-30x10', places: row(500, 100, 5) },
      restsOnWall: true,
      use: 'handled',
    },
  },
  'letter-rail': {
    words: 'letter rail',
    figures: {
      width: 600,
      height: 50,
      depth: 15,
      weight: 0.25,
      load: { weight: 0.2, reach: 15 },
      magnets: { magnet: usualMagnet, places: row(600, 30, 4) },
      restsOnWall: true,
      use: 'handled',
    },
  },
  'coat-hook': {
    words: 'coat hook',
    figures: {
      width: 40,
      height: 80,
      depth: 50,
      weight: 0.08,
      load: { weight: 2, reach: 45 },
      magnets: { magnet: 'N42-30x10', places: [[20, 60]] },
      restsOnWall: true,
      use: 'handled',
    },
  },
  'bicycle-hook': {
    words: 'bicycle hook',
    figures: {
      width: 120,
      height: 250,
      depth: 330,
      weight: 0.8,
      load: { weight: 12, reach: 300 },
      // Three diameters apart, so that neither takes steel from the other.
      magnets: {
        magnet: 'N42-30x10',
        places: [225, 25].flatMap((y) => [15, 105].map((x): [number, number] => [x, y])),
      },
      restsOnWall: true,
      use: 'could-hurt',
    },
  },
  'game-piece': {
    words: 'game piece',
    figures: {
      width: 30,
      height: 30,
      depth: 6,
      weight: 0.01,
      magnets: { magnet: 'N42-10x3', places: [[15, 15]] },
      use: 'handled',
    },
  },
};

export function isReadyHungKind(kind: string): kind is ReadyHungKind {
  return Object.hasOwn(kinds, kind);
}

/** `tool rack`; a kind that someone has named stays as it was written. */
export function hungKindInWords(kind: string): string {
  return isReadyHungKind(kind) ? kinds[kind].words : kind;
}

/** What a new item of a kind is; undefined for a kind nobody knows. */
export function hungFigures(kind: string, own: readonly HungKind[] = []): HungFigures | undefined {
  return isReadyHungKind(kind) ? kinds[kind].figures : findKind(own, kind)?.item;
}

/** What its fall would mean, as it says or as its kind usually is; the graver where nobody knows. */
export function useOf({ use, kind }: HungItem, own: readonly HungKind[] = []): Use {
  return use ?? hungFigures(kind, own)?.use ?? 'could-hurt';
}

/** What is moved about on the marking that it is put on. */
export function isPiece(kind: string, own: readonly HungKind[] = []): boolean {
  return kind === 'game-piece' || findKind(own, kind)?.piece === true;
}

/**
 * A new item under an id that the wall has not used.
 *
 * @param at its lower left corner
 * @param own kinds beside the ready ones; the job may not have them yet
 */
export function newHung(
  job: Job,
  wall: Wall,
  kind: string,
  { x, y }: MmPoint,
  own: readonly HungKind[] = job.hungKinds ?? [],
): HungItem {
  const figures = hungFigures(kind, own) ?? { width: 200, height: 200, depth: 0 };
  return { id: freshId(wall, 'H'), kind, x, y, ...figures } as HungItem;
}

function flat(
  words: string,
  width: number,
  height: number,
  weight: number,
  depth: number,
  places: [number, number][],
  use: Use,
): ReadyKind {
  const figures = { width, height, depth, weight, magnets: { magnet: usualMagnet, places }, use };
  return { words, figures };
}

function corners(width: number, height: number): [number, number][] {
  return [...row(width, height - inset, 2), ...row(width, inset, 2)];
}

/** From edge to edge at one height, as far from the ends as from the top. */
function row(width: number, y: number, count: number): [number, number][] {
  const step = (width - 2 * inset) / (count - 1);
  return Array.from({ length: count }, (_, i) => [inset + i * step, y]);
}
