import { figure, type LengthUnits } from '../lengths';
import type { CalculationPart } from './calculation';
import { newtonsOfKilograms, poundsOfNewtons } from './force-units';
import type { Verdict } from './judge-item';
import type { ModeName } from './rigid-item';

/* How a calculation is headed and its figures are written, on screen and paper alike. */

export const partWords: Readonly<Record<CalculationPart, string>> = {
  wall: 'Wall',
  magnet: 'Magnets',
  pull: 'Pull of a magnet',
  tolerances: 'Tolerances',
  friction: 'Friction',
  loads: 'Loads and tensions',
  modes: 'What it holds',
};

export const modeWords: Readonly<Record<ModeName, string>> = {
  slip: 'slipping down',
  turning: 'turning on the wall',
  'pull-off': 'a magnet pried off',
  tipping: 'tipping off as a whole',
};

/** What can be said of an item: its verdict, or that it is screwed. */
export type ItemState = Verdict | 'screwed to a fixing point';

/** Four figures that count, but no more than five places; a true minus sign. */
export function calculationFigure(value: number): string {
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '–';
  const size = Math.abs(value) < 1e-12 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return figure(value, Math.min(5, Math.max(0, 3 - size)));
}

/** How many times over, never rounded up: 2.97 is not 3. */
export function timesFigure(factor: number): string {
  if (!Number.isFinite(factor)) return '∞';
  return factor >= 100 ? String(Math.floor(factor)) : figure(Math.floor(factor * 100 + 1e-9) / 100, 2);
}

/** In per cent, never rounded down: 100.2 % is not 100. */
export function usedFigure(utilisation: number): string {
  return Number.isFinite(utilisation) ? `${Math.ceil(utilisation * 100 - 1e-9)} %` : '∞';
}

/** A largest weight, never rounded up: kilograms, or pounds where lengths are in feet. */
export function largestWeightWords(kilograms: number, units: LengthUnits = 'mm'): string {
  const isPounds = units === 'ft-in';
  const weight = isPounds ? poundsOfNewtons(newtonsOfKilograms(kilograms)) : kilograms;
  const places = weight < 10 ? 2 : 1;
  const whole = Math.floor(weight * 10 ** places + 1e-9) / 10 ** places;
  return `${figure(whole, places)} ${isPounds ? 'lb' : 'kg'}`;
}

/** `holds, 3.71 times over where 3 are asked for`. */
export function ledToWords(to: {
  readonly verdict: Verdict;
  readonly isScrewed: boolean;
  readonly factor?: number;
  readonly asked?: number;
}): string {
  if (to.isScrewed) return 'screwed to a fixing point';
  if (to.factor === undefined || to.asked === undefined) return to.verdict;
  return `${to.verdict}, ${timesFigure(to.factor)} times over where ${to.asked} are asked for`;
}
