import { heaviestItem, mostMagnetsOfItem } from '../../core/job/limits';
import type { Entry } from '../schedule/parse-entry';
import { plainFigure } from '../schedule/parse-sizes';

/** Kilograms, or nothing. */
export function parseWeight(text: string): Entry<number | undefined> {
  if (text.trim() === '') return { value: undefined };
  const value = plainFigure(text.replace(/\s*kg\s*$/i, ''));
  return value >= 0 && value <= heaviestItem
    ? { value }
    : { fault: `Type a weight in kg from 0 to ${heaviestItem}, such as 0.35.` };
}

export function parseMagnetCount(text: string): Entry<number> {
  const value = plainFigure(text);
  return Number.isInteger(value) && value >= 0 && value <= mostMagnetsOfItem
    ? { value }
    : { fault: `Type how many magnets hold it, from 0 to ${mostMagnetsOfItem}.` };
}
