import type { magnetMaterials, MagnetRecord, magnetShapes } from '../job/magnet-schema';
import type { Mm } from '../units';
import type { Contact } from './friction';

export type MagnetShape = (typeof magnetShapes)[number];
export type MagnetMaterial = (typeof magnetMaterials)[number];

/** A magnet as it is bought. */
export interface Magnet {
  /** Of the job's list; absent: of none. */
  readonly id?: string;
  readonly name: string;
  /** The closed form knows bare discs; the others need a test or their maker's figures, rings and pots at least the solver. */
  readonly shape: MagnetShape;
  /** Of a disc, pot or ring; of a block or foil the shorter side of its face. */
  readonly diameter: Mm;
  readonly height: Mm;
  readonly material: MagnetMaterial;
  /** Remanence, T; the data sheet's least where it is known. */
  readonly Br: number;
  /** Recoil permeability, relative. */
  readonly mur: number;
  readonly contact: Contact;
  /** Of rubber or another cover on the face that meets the wall: it adds to the gap. */
  readonly cover: Mm;
  /** Longer side of a block's or foil's face. */
  readonly length?: Mm;
  /** Of a ring. */
  readonly bore?: Mm;
  /** Of a pot. */
  readonly cup?: MagnetCup;
  readonly rated?: RatedPull;
  /** Of foil, N/cm², under the conditions of `rated`. */
  readonly ratedPerArea?: number;
  /** In the job's currency. */
  readonly price?: number;
}

/** The steel round a pot's magnet, which stands on its floor; round, without a hole. What is absent is not known. */
export interface MagnetCup {
  /** Diameter of the magnet. */
  readonly magnet?: Mm;
  readonly wall?: Mm;
  readonly floor?: Mm;
  /** How far the magnet's face lies behind the rim. */
  readonly recess?: Mm;
}

/** A maker's pull, with what it was measured on; without its conditions it says nothing about a thin sheet. */
export interface RatedPull {
  /** N. */
  readonly force: number;
  /** Of the steel it was measured on. */
  readonly thickness: Mm;
  /** Between magnet (with its cover) and steel. */
  readonly gap: Mm;
}

export interface MaterialLimits {
  /** Loss of remanence per kelvin above 20 °C. */
  readonly loss: number;
  /** °C; thin ones (H/D below 0.25) bear less. */
  readonly hottest: number;
  readonly hottestThin: number;
  readonly coldest: number;
}

/**
 * Note on holding force, section 3: neodymium −0.11 %/K, to 80 °C (grades without a letter), thin discs 60 °C; ferrite
 * −0.2 %/K and at risk in hard frost. The limits in °C are typical ones from memory; what counts as hard frost, judgement.
 */
export const materialLimits: Readonly<Record<MagnetMaterial, MaterialLimits>> = {
  neodymium: { loss: 0.0011, hottest: 80, hottestThin: 60, coldest: -40 },
  ferrite: { loss: 0.002, hottest: 200, hottestThin: 200, coldest: -10 },
};

/** Typical remanences, T, and recoil permeability: note on holding force, section 2. */
export const grades = {
  N35: { material: 'neodymium', Br: 1.19, mur: 1.05 },
  N42: { material: 'neodymium', Br: 1.3, mur: 1.05 },
  Y30: { material: 'ferrite', Br: 0.39, mur: 1.05 },
} as const;
export type Grade = keyof typeof grades;

/** A generic bare disc. @example disc('N42', 20, 5) // N42 20 × 5 mm */
export function disc(grade: Grade, diameter: Mm, height: Mm): Magnet {
  const { material, Br, mur } = grades[grade];
  return {
    name: `${grade} ${diameter} × ${height} mm`,
    shape: 'disc',
    diameter,
    height,
    material,
    Br,
    mur,
    contact: material === 'ferrite' ? 'ferrite' : 'metal',
    cover: 0,
  };
}

/** The same magnet with rubber on its face; rated figures and price of the bare one do not go with it. */
export function withRubber(magnet: Magnet, thickness: Mm): Magnet {
  const { id: _id, rated: _rated, ratedPerArea: _area, price: _price, ...bare } = magnet;
  return {
    ...bare,
    name: `${magnet.name} with ${thickness} mm rubber`,
    contact: 'rubber',
    cover: magnet.cover + thickness,
  };
}

/** Whether a pull measured with one says anything certain about the other. */
export function isSameMagnet(a: Magnet, b: Magnet): boolean {
  const near = (one: number, other: number, by: number) => Math.abs(one - other) <= by;
  return (
    a.shape === b.shape &&
    a.material === b.material &&
    near(a.diameter, b.diameter, 0.1) &&
    near(a.length ?? a.diameter, b.length ?? b.diameter, 0.1) &&
    near(a.bore ?? 0, b.bore ?? 0, 0.1) &&
    (['magnet', 'wall', 'floor', 'recess'] as const).every((of) =>
      near(a.cup?.[of] ?? -1, b.cup?.[of] ?? -1, 0.1),
    ) &&
    near(a.height, b.height, 0.1) &&
    a.contact === b.contact &&
    near(a.cover, b.cover, 0.05) &&
    near(a.Br, b.Br, 0.005)
  );
}

/** Its widest measure on the wall, mm: what edges and neighbours are counted by. */
export function across({ diameter, length = diameter }: Magnet): Mm {
  return Math.max(diameter, length);
}

/** Longer than this many times its width, no disc stands for a block; judgement. */
const longestBlock = 2;

/**
 * Of the pull of the disc that stands for a block, what is counted, and what it may pull at most. By the method of images a
 * block of up to twice its width pulls 0.91 to 1.06 of that disc on thick steel (a test integrates it); on a sheet that it
 * saturates, 1 to 1.4 (the note's in-plane part, integrated for a square). Rounded outward: judgement.
 */
export const blockShares = { counted: 0.9, most: 1.5 } as const;

/**
 * The disc that stands for a magnet in the model: a bare disc itself, for a block the disc of the same face and height, of
 * which `blockShares` counts less. Judgement, no source: only a test settles a block. Undefined for what no disc stands for.
 */
export function discFor(magnet: Magnet): Magnet | undefined {
  const { shape, diameter, length = diameter } = magnet;
  if (shape === 'disc') return magnet;
  const [side, other] = [Math.min(diameter, length), Math.max(diameter, length)];
  if (shape !== 'block' || other > longestBlock * side) return undefined;
  return { ...magnet, diameter: Math.sqrt((4 * side * other) / Math.PI) };
}

/** A magnet of the job's list as the calculation takes it. */
export function magnetOf({ remanence, recoil, ...record }: MagnetRecord): Magnet {
  return { ...record, Br: remanence, mur: recoil };
}
