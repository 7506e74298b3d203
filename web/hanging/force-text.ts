import { newtonsOfKilograms, newtonsOfPounds } from '../../core/holding/force-units';
import type { MagnetRecord } from '../../core/job/magnet-schema';
import type { Entry } from '../schedule/parse-entry';
import { shortened } from '../price/packs-text';
import { plainFigure } from '../schedule/parse-sizes';

/* Forces as they are typed: newtons, or kilograms and pounds with their unit behind them. */

/** N; undefined for what is no force. */
export function forceOf(text: string): number | undefined {
  const parts = /^(.+?)\s*(n|kg|kgf|lb|lbs|lbf)?$/i.exec(text.trim());
  const value = plainFigure(parts?.[1] ?? '');
  if (!(value >= 0)) return undefined;
  const unit = (parts?.[2] ?? 'n').toLowerCase();
  if (unit === 'n') return value;
  return unit.startsWith('kg') ? newtonsOfKilograms(value) : newtonsOfPounds(value);
}

/** Several readings, parted by semicolons. */
export function parseReadings(text: string): Entry<number[]> {
  const parts = text.split(';').map((part) => part.trim());
  const readings = parts.filter(Boolean).map(forceOf);
  if (readings.length === 0) return { fault: 'Type at least one reading, such as 15.3; 14.9; 15.8.' };
  const at = readings.indexOf(undefined);
  if (at >= 0)
    return {
      fault: `“${shortened(parts.filter(Boolean)[at]!)}” is no force: type newtons, or kg or lb with the unit, parted by semicolons, such as 15.3; 1.56 kg; 3.4 lb.`,
    };
  return { value: readings as number[] };
}

export function writeReadings(readings: readonly number[]): string {
  return readings.map(tidy).join('; ');
}

/** `47 N on 10 mm across 0 mm`: a maker's pull with what it was measured on; empty: none. */
export function parseRated(text: string): Entry<MagnetRecord['rated']> {
  if (text.trim() === '') return { value: undefined };
  const parts = /^(.+?)\s+on\s+(.+?)(?:\s*mm)?\s+across\s+(.+?)(?:\s*mm)?$/i.exec(text.trim());
  const force = forceOf(parts?.[1] ?? '');
  const [thickness, gap] = [plainFigure(parts?.[2] ?? ''), plainFigure(parts?.[3] ?? '')];
  return force !== undefined && force > 0 && thickness > 0 && gap >= 0
    ? { value: { force, thickness, gap } }
    : {
        fault: 'Type the pull, the steel it was measured on and the gap, such as 47 N on 10 mm across 0 mm.',
      };
}

export function writeRated(rated: MagnetRecord['rated']): string {
  return rated ? `${tidy(rated.force)} N on ${tidy(rated.thickness)} mm across ${tidy(rated.gap)} mm` : '';
}

export function tidy(value: number): string {
  return String(Math.round(value * 100) / 100);
}
