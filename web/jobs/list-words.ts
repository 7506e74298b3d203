/** Jobs whose name holds every word typed, whatever the case. */
export function jobsNamed<T extends { readonly name: string }>(
  typed: string,
  jobs: readonly T[],
): readonly T[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return jobs.filter(({ name }) => words.every((word) => name.toLowerCase().includes(word)));
}

/** `40 kB`, `1.3 MB`; kilobytes of a thousand, and never less than one. */
export function sizeInWords(characters: number): string {
  const kilobytes = Math.max(1, Math.round(characters / 1000));
  return kilobytes < 1000 ? `${kilobytes} kB` : `${(kilobytes / 1000).toFixed(1)} MB`;
}
