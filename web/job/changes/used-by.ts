/**
 * Why a kind cannot be deleted, in a sentence; null where nothing is of it.
 *
 * @param users what is of that kind: `K1 on wall A`
 */
export function usedBy(name: string, users: readonly string[]): { readonly fault: string } | null {
  if (users.length === 0) return null;
  const more = users.length > 3 ? [`${users.length - 3} more`] : [];
  const words = [...users.slice(0, 3), ...more];
  const listed = words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
  const them = users.length === 1 ? 'it' : 'them';
  return { fault: `“${name}” is the kind of ${listed}; give ${them} another kind first.` };
}
