import type { Mm } from './units';

/*
 * How lengths are written for people: in the unit that the job is measured in. The job itself stays in mm.
 */

export const lengthUnits = ['mm', 'cm', 'm', 'ft-in'] as const;
export type LengthUnits = (typeof lengthUnits)[number];

/** International yard and pound agreement, 1959: 25.4 mm exactly. */
export const inch: Mm = 25.4;
/** The finest stroke of a tape in inches. */
export const sixteenth: Mm = inch / 16;

/** What is finer than this is no length for a tape of that unit and is written in mm, with its unit. */
const finest: Readonly<Record<LengthUnits, Mm>> = { mm: 0, cm: 1, m: 10, 'ft-in': inch / 4 };

/**
 * A length as it stands in a field or on a tape: bare in mm, cm and m; feet and inches to the nearest sixteenth,
 * with their marks. What is too fine for the unit, such as the thickness of a panel, is in mm and says so.
 *
 * @param decimals of a millimetre; cm and m show as much
 * @example writeLength(1196.975, 'ft-in') // 3'-11 1/8"
 * @example writeLength(0.5, 'm') // 0.5 mm
 */
export function writeLength(length: Mm, units: LengthUnits, decimals = 2): string {
  if (isTooFine(length, units)) return `${figure(length, decimals)} mm`;
  if (units === 'ft-in') return feetAndInches(length);
  if (units === 'm') return atLeastTwoPlaces(figure(length / 1000, decimals + 3));
  return units === 'cm' ? figure(length / 10, decimals + 1) : figure(length, decimals);
}

/** The same with its unit, as it stands in a sentence: `1200 mm`, `1.20 m`, `3'-11 1/4"`. */
export function lengthInWords(length: Mm, units: LengthUnits, decimals = 2): string {
  const written = writeLength(length, units, decimals);
  return units === 'ft-in' || isTooFine(length, units) ? written : `${written} ${units}`;
}

/** What stands beside a field whose figure has no unit of its own: `mm`, `ft and in`. */
export function unitInWords(units: LengthUnits): string {
  return units === 'ft-in' ? 'ft and in' : units;
}

/**
 * A sentence whose lengths are in mm, as findings are written, in another unit: `12.5 mm`, `300 × 200 mm`,
 * `20 and 30 mm`, and places as `at (120, 300)`, `from (0, 0) to (120, 300)`. What the sentence asks for at least is rounded up.
 */
export function sentenceInUnits(sentence: string, units: LengthUnits): string {
  if (units === 'mm') return sentence;
  return sentence
    .replace(placePattern, (_, where: string, x: string, y: string) =>
      [x, y].map((place) => lengthInWords(numberOf(place), units)).reduce((a, b) => `${where} (${a}, ${b})`),
    )
    .replace(lengthPattern, (_, least = '', first = '', between = '', last = '', more = '') => {
      const write = (text: string) => {
        const length = numberOf(text);
        return lengthInWords(least || more ? roundedUp(length, units) : length, units);
      };
      return `${least}${first ? write(first) + between : ''}${write(last)}${more}`;
    });
}

const number = String.raw`[−-]?\d+(?:\.\d+)?`;
const placePattern = new RegExp(String.raw`\b(at|from|to) \((${number}), (${number})\)`, 'g');
const lengthPattern = new RegExp(
  String.raw`(\bat least )?(?:(?<![\w.])(${number})( × | and | to | or ))?(?<![\w.])(${number}) mm\b(?![²³/])( or more)?`,
  'g',
);

function numberOf(text: string): number {
  return Number(text.replace('−', '-'));
}

function roundedUp(length: Mm, units: LengthUnits): Mm {
  if (units !== 'ft-in' || isTooFine(length, units)) return length;
  return Math.ceil(length / sixteenth - 0.01 / sixteenth) * sixteenth;
}

function isTooFine(length: Mm, units: LengthUnits): boolean {
  const size = Math.abs(length);
  const isSixteenth = units === 'ft-in' && Math.abs(size - wholeSixteenths(size) * sixteenth) <= 0.01;
  return size > 0 && size < finest[units] && !isSixteenth;
}

function feetAndInches(length: Mm): string {
  const all = wholeSixteenths(Math.abs(length));
  const [feet, rest] = [Math.floor(all / 192), all % 192];
  const [inches, parts] = [Math.floor(rest / 16), rest % 16];
  const fraction = parts === 0 ? '' : reduced(parts);
  const whole = inches > 0 || !fraction || feet > 0 ? String(inches) : '';
  const inchText = `${[whole, fraction].filter((part) => part).join(' ')}"`;
  return `${length < 0 && all > 0 ? '−' : ''}${feet > 0 ? `${feet}'-` : ''}${inchText}`;
}

function wholeSixteenths(size: Mm): number {
  return Math.round(Number((size / sixteenth).toFixed(6)));
}

function reduced(parts: number): string {
  const by = parts % 8 === 0 ? 8 : parts % 4 === 0 ? 4 : parts % 2 === 0 ? 2 : 1;
  return `${parts / by}/${16 / by}`;
}

/** Trailing zeros dropped, ties to the larger absolute value, a true minus sign. */
export function figure(value: number, decimals: number): string {
  const factor = 10 ** decimals;
  // toFixed(6) first: 0.15 · 10 is 1.4999999999999998 in binary, and a tape knows nothing of that.
  const rounded = Math.round(Number((Math.abs(value) * factor).toFixed(6))) / factor;
  return (value < 0 && rounded > 0 ? '−' : '') + String(rounded);
}

function atLeastTwoPlaces(text: string): string {
  const places = text.split('.')[1]?.length ?? 0;
  return places >= 2 ? text : `${text}${places === 0 ? '.' : ''}${'0'.repeat(2 - places)}`;
}
