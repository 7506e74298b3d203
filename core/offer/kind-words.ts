import { buildUpKind } from '../job/build-up-kinds';

/** What a build-up does for whoever uses the wall, and what it does not. No figures: they come from trials on the wall. */
export interface KindWords {
  readonly does: readonly string[];
  readonly doesNot: readonly string[];
}

/** Common practice, no source. */
export function kindWords(buildUp: string): KindWords {
  const { magnetic, surface } = buildUpKind(buildUp);
  const isFilm = /(^|-)film(-|$)/.test(buildUp);
  const heldByFilm = magnetic === 'coating' && buildUp.startsWith('magnetic-film');
  const does = [
    ...(magnetic === 'steel'
      ? ['Holds strong magnets through its finish, with several sheets under one.']
      : []),
    ...(heldByFilm
      ? ['Holds single sheets of paper under strong magnets, on a thin layer that adds little weight.']
      : []),
    ...(magnetic === 'coating' && !heldByFilm
      ? ['Holds single sheets of paper under strong magnets, and follows any shape of wall.']
      : []),
    ...(surface === 'writable' ? ['Is written on with dry-wipe pens that were tried on it.'] : []),
    ...(surface === 'chalk' ? ['Is written on with chalk.'] : []),
    ...(magnetic === 'none' && surface === 'plain' ? ['Is looked at.'] : []),
  ];
  const doesNot = [
    ...(magnetic === 'steel'
      ? ['Carries nothing heavy above beds, seats or walkways without a mechanical fixing.']
      : []),
    ...(magnetic === 'coating' ? ['Holds no tools, frames or thick stacks; weak magnets slide.'] : []),
    ...(magnetic === 'none' ? ['Holds no magnets.'] : []),
    ...(surface === 'plain' ? ['Is not written on.'] : []),
    ...(isFilm ? ['Is not without seams where it is wider than its roll, and they may show.'] : []),
  ];
  return { does, doesNot };
}

/** Of several build-ups side by side on one job; what the one does not and another does stands by itself. */
export function kindsInWords(buildUps: readonly string[]): readonly { label: string; words: KindWords }[] {
  return [...new Set(buildUps)].map((id) => ({ label: buildUpKind(id).label, words: kindWords(id) }));
}
