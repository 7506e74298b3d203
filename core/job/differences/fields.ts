import { figure, isSame, sameLength, type Says } from './difference';

/** How a field is called, and how its value is said. */
export interface FieldWords {
  readonly label: string;
  /** `mm`: a length, with the tolerance of lengths. */
  readonly unit?: string;
  readonly say?: (value: unknown) => string;
  /** What a field that is missing means; it is the same as that value. */
  readonly usual?: unknown;
  /** What is said of a field that is missing, if not `none`. */
  readonly absent?: string;
  /** Says the change in words of its own: `is locked now`. */
  readonly whole?: (to: unknown, from: unknown) => string;
}

export type FieldList = Readonly<Record<string, FieldWords>>;

/**
 * Fields of two objects that differ: `clearance 10 mm instead of 5 mm`. Fields that are not listed are compared too, so
 * that nothing another program or a later version writes goes unsaid.
 *
 * @param skip fields that are compared elsewhere
 */
export function fieldDifferences(
  before: object,
  after: object,
  words: FieldList,
  skip: readonly string[] = [],
): Says[] {
  const [was, is] = [before as Record<string, unknown>, after as Record<string, unknown>];
  const keys = [...new Set([...Object.keys(words), ...Object.keys(is), ...Object.keys(was)])];
  return keys
    .filter((key) => !skip.includes(key))
    .flatMap((key): Says[] => {
      const field = words[key] ?? { label: inWords(key) };
      const [from, to] = [emptied(was[key]) ?? field.usual, emptied(is[key]) ?? field.usual];
      if (isSame(from, to, field.unit === 'mm' ? sameLength : 0)) return [];
      return [{ kind: 'changed', says: changeInWords(field, from, to) }];
    });
}

function changeInWords(
  { label, unit, say, absent = 'none', whole }: FieldWords,
  from: unknown,
  to: unknown,
): string {
  if (whole) return whole(to, from);
  const value = (of: unknown): string | null => {
    if (of === undefined) return absent;
    if (say) return say(of);
    if (typeof of === 'number') return figure(of) + (unit ? ` ${unit}` : '');
    if (typeof of === 'string') return `“${of.length > 60 ? `${of.slice(0, 60)}…` : of}”`;
    if (typeof of === 'boolean') return of ? 'yes' : 'no';
    return null;
  };
  const [earlier, later] = [value(from), value(to)];
  return earlier === null || later === null || earlier === later
    ? `${label} not as before`
    : `${label} ${later} instead of ${earlier}`;
}

/** A text without a letter says as much as none. */
function emptied(value: unknown): unknown {
  return value === '' ? undefined : value;
}

/** `checkMeasures` → `check measures`. */
function inWords(key: string): string {
  return /^[a-z][A-Za-z]*$/.test(key)
    ? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    : `“${key}”`;
}
