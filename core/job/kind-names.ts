import { longestKindName } from './limits';

/*
 * Kinds that the user has made, of fittings and of what hangs, are known by their names.
 */

export interface NamedKind {
  readonly name: string;
}

/** By its name, capitals and spaces apart. */
export function findKind<K extends NamedKind>(kinds: readonly K[], name: string): K | undefined {
  return kinds.find((kind) => kind.name === name) ?? kinds.find((kind) => isSameName(kind.name, name));
}

export function isSameName(a: string, b: string): boolean {
  return plain(a) === plain(b);
}

/** Those of `kinds` that are not among a job's own, after these, as many as there may be; `own` itself if none comes. */
export function withMissing<K extends NamedKind>(
  own: readonly K[],
  kinds: readonly K[],
  most: number,
): readonly K[] {
  const missing = kinds.filter(({ name }, i) => !findKind(own, name) && !findKind(kinds.slice(0, i), name));
  const brought = missing.slice(0, Math.max(0, most - own.length));
  return brought.length > 0 ? [...own, ...brought] : own;
}

/**
 * Why a kind cannot be called so, in a sentence, or null.
 *
 * @param usual words that mean something here already
 * @param others the kinds it has to differ from
 */
export function faultOfName(
  name: string,
  usual: readonly string[],
  others: readonly NamedKind[],
): string | null {
  if (name.trim() === '') return 'Give the kind a name.';
  if (name.length > longestKindName)
    return `The name has ${name.length} characters; ${longestKindName} is the most.`;
  if (name !== name.trim() || !/^\p{L}[\p{L}\p{M}\p{N} ./()+&'’×°-]*$/u.test(name))
    return 'Begin the name with a letter; letters, figures, spaces and . / ( ) + & - may follow.';
  const same = usual.find((word) => isSameName(word, name) || isSameName(`${word}s`, name));
  if (same) return `“${same}” is a usual word here already; give the kind another name.`;
  const other = findKind(others, name);
  return other ? `There is a kind “${other.name}” already; give this one another name.` : null;
}

function plain(name: string): string {
  return name
    .normalize('NFC')
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ');
}
