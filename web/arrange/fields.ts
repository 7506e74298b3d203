import { parseCount, type Entry } from '../schedule/parse-entry';
import { parsePlace, plainFigure } from '../schedule/parse-sizes';

/*
 * Figures typed for a command: nothing typed is what the command takes for nothing, and a fault keeps it from running.
 */

/** A length; nothing is 0. */
export function parseStep(text: string): Entry<number> {
  return text.trim() === '' ? { value: 0 } : parsePlace(text);
}

/** How often, from 1. */
export function parseTimes(text: string): Entry<number> {
  const entry = parseCount(text);
  if ('value' in entry && entry.value < 1) return { fault: 'Type how often, from 1.' };
  return entry;
}

/** Per cent above 0. */
export function parsePercent(text: string): Entry<number> {
  const value = plainFigure(text.trim().replace(/%$/, ''));
  return value > 0 && value <= 10_000 ? { value } : { fault: 'Type per cent above 0, such as 50.' };
}

/** Whether all of several entries can be used. */
export function faultsOf<K extends string>(
  entries: Record<K, Entry<number>>,
): Partial<Record<K, string>> | null {
  const faults: Partial<Record<K, string>> = {};
  for (const key of Object.keys(entries) as K[]) {
    const entry = entries[key];
    if ('fault' in entry) faults[key] = entry.fault;
  }
  return Object.keys(faults).length > 0 ? faults : null;
}

export function valueOf(entry: Entry<number>): number {
  return 'value' in entry ? entry.value : 0;
}
