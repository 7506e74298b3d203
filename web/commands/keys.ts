/** `Ctrl+Shift+Z` stays, `P S` becomes `P then S`: keys as the list tells them. */
export function keyWords(keys: string): string {
  return keys
    .split(' ')
    .map((press) => press.replace(/Arrow(\w+)/, (_, way: string) => `Arrow ${way.toLowerCase()}`))
    .join(' then ');
}

/** Keys in the notation of tinykeys: Ctrl is the Command key on a Mac, a digit counts wherever its key stands. */
export function binding(keys: string): string {
  return keys
    .split(' ')
    .map((press) =>
      press
        .split('+')
        .map((key) => (key === 'Ctrl' ? '$mod' : /^\d$/.test(key) ? `(Digit${key}|Numpad${key})` : key))
        .join('+'),
    )
    .join(' ');
}
