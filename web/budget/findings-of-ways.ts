import type { Finding } from '../../core/finding';

/** Left out: whoever asks for a budget price knows it. */
const known = 'not-surveyed';

/**
 * Errors and warnings of several ways to build up a wall, in words; the same of several ways is said once, with the ways
 * that it is true of.
 */
export function findingsOfWays(
  ways: readonly { readonly title: string; readonly findings: readonly Finding[] }[],
): string[] {
  const titlesOf = new Map<string, string[]>();
  for (const { title, findings } of ways) {
    const told = findings.filter(({ level, code }) => level !== 'note' && code !== known);
    for (const text of new Set(told.map(({ text }) => text)))
      titlesOf.set(text, [...(titlesOf.get(text) ?? []), title]);
  }
  return [...titlesOf].map(([text, titles]) =>
    titles.length === ways.length ? text : `${titles.join(' and ')}: ${text}`,
  );
}
