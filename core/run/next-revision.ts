/** They read as figures on a drawing (common practice, no source). */
const leftOut = new Set(['I', 'O']);

/**
 * The revision after one: letters go on in the alphabet without I and O (A, B … H, J … Z, AA), a figure at the end is
 * counted up and keeps its leading noughts (P01, P02). Of a word without either the next is the word with ` 2`.
 *
 * @example nextRevision('') // 'A'
 * @example nextRevision('H') // 'J'
 */
export function nextRevision(revision: string): string {
  const now = revision.trim();
  if (now === '') return 'A';
  const [, name, figures] = /^(.*?)(\d+)$/.exec(now) ?? [];
  if (figures !== undefined) return name! + String(Number(figures) + 1).padStart(figures.length, '0');
  return /^[A-Z]{1,2}$/.test(now) ? nextLetters(now) : `${now} 2`;
}

/** The first revision from one on that none of the issued ones has. */
export function freeRevision(revision: string, issued: readonly { readonly id: string }[]): string {
  const taken = new Set(issued.map(({ id }) => id));
  let free = revision.trim() || nextRevision('');
  while (taken.has(free)) free = nextRevision(free);
  return free;
}

function nextLetters(letters: string): string {
  const last = letters.at(-1)!;
  const before = letters.slice(0, -1);
  if (last === 'Z') return (before === '' ? 'A' : nextLetters(before)) + 'A';
  const next = String.fromCharCode(last.charCodeAt(0) + 1);
  return leftOut.has(next) ? nextLetters(before + next) : before + next;
}
