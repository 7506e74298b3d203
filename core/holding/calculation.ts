/** One line of a calculation, as an engineer writes it: `ΣF  pull of all magnets  ΣFᵢ = 61.2 N  (source)`. */
export interface CalculationLine {
  readonly part: CalculationPart;
  readonly symbol: string;
  readonly words: string;
  /** In symbols of this and earlier lines; absent where the value is given. */
  readonly formula?: string;
  /** Never rounded here. */
  readonly value: number;
  /** '' for a plain number. */
  readonly unit: string;
  /** Where the value or the formula comes from. */
  readonly source: string;
}

export const calculationParts = [
  'wall',
  'magnet',
  'pull',
  'tolerances',
  'friction',
  'loads',
  'modes',
] as const;
export type CalculationPart = (typeof calculationParts)[number];

export const note = 'engineering note on holding force';
export const given = 'given';
