import type { Command } from '../commands/command';
import type { OpenJob } from '../job/open-job.svelte';
import { aligning } from './align-to.svelte';
import { alignedParts } from './aligned-parts';
import type { ObjectRef } from '../../core/job/shape';
import { align, allLocked, chosenWords, lockOrUnlock, mirror, space, turn, type Done } from './arrange';
import { everything, sameKind, sameRow } from './choose-alike';

/** Choosing several and arranging them, by keys and from the list of commands. */
export function arrangeCommands(open: OpenJob): readonly Command[] {
  const { wall, chosen } = open;
  const without = chosen.refs.length > 0 ? null : 'nothing is chosen';
  const command = (name: string, keys: string, does: () => Done, also?: string): Command => ({
    name,
    group: 'Chosen objects',
    keys,
    also,
    whyNot: without,
    run: () => chosen.say(does().words),
  });
  const choose = (refs: readonly ObjectRef[]) => {
    chosen.set(refs);
    chosen.say(`${chosenWords(open)} chosen.`);
  };
  return [
    {
      name: 'Choose everything on the wall',
      group: 'Chosen objects',
      keys: 'Ctrl+A',
      also: 'select all',
      whyNot: wall ? null : 'there is no wall',
      run: () => choose(everything(open)),
    },
    { ...command('Choose all of the same kind', 'C K', noDone), run: () => choose(sameKind(open)) },
    { ...command('Choose all of the same row', 'C R', noDone), run: () => choose(sameRow(open)) },
    {
      name: chosen.adding ? 'Choose one at a time' : 'Choose several, one after another',
      group: 'Chosen objects',
      keys: 'C S',
      also: 'frame add multiple',
      run: () => (chosen.adding = !chosen.adding),
    },
    ...alignedParts.map(({ part, title, keys }) =>
      command(title, keys, () => align(open, part, aligning.to), 'line up'),
    ),
    command('Space equally from left to right', 'A X', () => space(open, 'x', 'gaps'), 'distribute gaps'),
    command('Space equally from foot to top', 'A Y', () => space(open, 'y', 'gaps'), 'distribute gaps'),
    command('Mirror left to right', 'A M', () => mirror(open, 'x', 'own'), 'flip'),
    command('Mirror top to foot', 'A N', () => mirror(open, 'y', 'own'), 'flip'),
    command('Turn a quarter to the left', 'A Q', () => turn(open, 1), 'rotate'),
    command('Turn a quarter to the right', 'A W', () => turn(open, -1), 'rotate'),
    command(allLocked(open) ? 'Unlock' : 'Lock', 'A O', () => lockOrUnlock(open), 'hold fix'),
  ];
}

function noDone(): Done {
  return { done: false, words: '' };
}
