import type { ProductPack } from '../../core/job/product-schema';
import { parsePacks, shortened, writePacks } from './packs-text';
import { parseDay, parsePrice, parseText, writePrice, type Entry } from '../schedule/parse-entry';
import { lengthFigure } from '../look/figures';
import { plainFigure } from '../schedule/parse-sizes';
import { readLength } from '../tapes/read-length';

/** One field of a record: where it stands in it (`mixing.potLife`), what it is called, how it is typed. */
export interface SettingField {
  readonly path: string;
  readonly label: string;
  /** Shown after the label: "m²/h". */
  readonly unit?: string;
  readonly kind:
    | {
        readonly of: 'number';
        readonly least?: number;
        /** Instead of a least value: it is more than this. */
        readonly above?: number;
        readonly most?: number;
        readonly whole?: boolean;
        readonly needed?: boolean;
      }
    /** In the job's units. */
    | { readonly of: 'length'; readonly least?: number }
    | { readonly of: 'percent' }
    | { readonly of: 'day' }
    | { readonly of: 'time' }
    | { readonly of: 'yes-no' }
    | { readonly of: 'numbers'; readonly least: number; readonly most: number }
    | { readonly of: 'days' }
    | { readonly of: 'money'; readonly needed?: boolean }
    | { readonly of: 'packs' }
    | { readonly of: 'text'; readonly needed?: boolean }
    /** Words of several lines. */
    | { readonly of: 'lines'; readonly most?: number }
    /** Several texts, parted by semicolons. */
    | { readonly of: 'texts' }
    | {
        readonly of: 'choice';
        readonly options: readonly { readonly value: string; readonly label: string }[];
      };
  /** What counts while the field is empty, as it is written there. */
  readonly usual?: string;
}

type Record_ = Readonly<Record<string, unknown>>;

export function valueAt(record: object, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => (at as Record_ | undefined)?.[key], record);
}

/** The record with another value there; undefined takes the field out, and what holds nothing any more with it. */
export function withValueAt<T extends object>(record: T, path: string, value: unknown): T {
  const [key = '', ...rest] = path.split('.');
  const inner = (record as Record_)[key];
  const next =
    rest.length === 0 ? value : emptyToNothing(withValueAt((inner ?? {}) as object, rest.join('.'), value));
  // A list keeps its length: an entry of it cannot be empty.
  if (Array.isArray(record)) return (next === undefined ? record : record.with(Number(key), next)) as T;
  if (next === undefined) {
    const { [key]: _, ...left } = record as Record_;
    return left as T;
  }
  return { ...record, [key]: next };
}

function emptyToNothing(record: object): object | undefined {
  return Object.keys(record).length > 0 ? record : undefined;
}

export function writeField({ kind }: SettingField, value: unknown): string {
  if (value === undefined || value === null) return '';
  if (kind.of === 'percent') return tidy(Number(value) * 100);
  if (kind.of === 'number') return tidy(Number(value));
  if (kind.of === 'length') return lengthFigure(Number(value));
  if (kind.of === 'money') return writePrice(Number(value));
  if (kind.of === 'packs') return writePacks(value as ProductPack[]);
  return Array.isArray(value) ? value.join(kind.of === 'texts' ? '; ' : ', ') : String(value);
}

/** As many characters as the job file takes in one text. */
const longest = 2000;

/** What was typed; empty takes the field out, unless it is needed. A list of packs is empty, not missing. */
export function parseField({ kind }: SettingField, text: string): Entry<unknown> {
  const typed = text.trim();
  if (typed === '' && !('needed' in kind && kind.needed)) {
    return { value: kind.of === 'packs' ? [] : undefined };
  }
  if (kind.of === 'text' && typed === '') return { fault: 'Type something here, or take the row out.' };
  if (kind.of === 'text' || kind.of === 'texts') {
    const most = Math.max(...(kind.of === 'text' ? [typed] : typed.split(';')).map(({ length }) => length));
    if (most > longest) return { fault: `These are ${most} characters; type ${longest} at the most.` };
  }
  if (kind.of === 'text') return parseText(text);
  if (kind.of === 'lines') {
    const { most = longest } = kind;
    return typed.length > most
      ? { fault: `These are ${typed.length} characters; type ${most} at the most.` }
      : { value: typed };
  }
  if (kind.of === 'length') {
    const { least = 0 } = kind;
    return readLength(text, least, least === 0 ? 'Type a length from 0' : 'Type a length');
  }
  if (kind.of === 'day') return parseDay(text);
  if (kind.of === 'texts') {
    return {
      value: typed
        .split(';')
        .map((part) => part.trim())
        .filter(Boolean),
    };
  }
  if (kind.of === 'choice' || kind.of === 'yes-no') return { value: text };
  if (kind.of === 'money') return parsePrice(text);
  if (kind.of === 'packs') return parsePacks(text);
  if (kind.of === 'time') {
    return /^([01]?\d|2[0-3]):[0-5]\d$/.test(typed)
      ? { value: typed.padStart(5, '0') }
      : { fault: 'Type a time of day, such as 8:30.' };
  }
  if (kind.of === 'days') return parseDays(typed);
  if (kind.of === 'numbers') {
    const numbers = typed.split(/[\s,;]+/).map(Number);
    return numbers.every((one) => Number.isInteger(one) && one >= kind.least && one <= kind.most)
      ? { value: [...new Set(numbers)].sort((a, b) => a - b) }
      : { fault: `Type whole numbers from ${kind.least} to ${kind.most}, such as 1, 2, 3.` };
  }
  const number = plainFigure(typed.replace(/\s*%$/, ''));
  if (kind.of === 'percent') {
    return number >= 0 && number < 100
      ? { value: number / 100 }
      : { fault: 'Type per cent from 0 to below 100, such as 10.' };
  }
  const { least = 0, above, most = 1e6, whole = false } = kind;
  const isEnough = above === undefined ? number >= least : number > above;
  const good = isEnough && number <= most && (!whole || Number.isInteger(number));
  const what = whole ? 'a whole number' : 'a number';
  const from = above === undefined ? `from ${tidy(least)} to` : `above ${tidy(above)}, at most`;
  return good ? { value: number } : { fault: `Type ${what} ${from} ${tidy(most)}.` };
}

function parseDays(typed: string): Entry<string[]> {
  const days: string[] = [];
  for (const part of typed.split(/[\s,;]+/)) {
    const day = parseDay(part);
    if ('fault' in day) return { fault: `“${shortened(part)}” is no day: ${lowered(day.fault)}` };
    days.push(day.value);
  }
  return { value: [...new Set(days)].sort() };
}

function lowered(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

function tidy(value: number): string {
  return String(Math.round(value * 1e6) / 1e6);
}
