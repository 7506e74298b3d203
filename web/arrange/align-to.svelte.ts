/** What is aligned to: the object chosen first, the wall's own edges, or the box about all that is chosen. */
export type AlignTo = 'first' | 'wall' | 'all';

export const alignToOptions = [
  { value: 'first', label: 'the first chosen', short: 'first' },
  { value: 'wall', label: 'the wall', short: 'wall' },
  { value: 'all', label: 'all together', short: 'all' },
] as const;

/** As last set, on strip and schedule alike. */
export const aligning = $state<{ to: AlignTo }>({ to: 'first' });
