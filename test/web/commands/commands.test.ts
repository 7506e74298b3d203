import { describe, expect, it } from 'vitest';
import { parseKeybinding } from 'tinykeys';
import { commandsFor, type Command } from '../../../web/commands/command';
import { binding, keyWords } from '../../../web/commands/keys';

const command = (name: string, group: Command['group'], also?: string): Command => ({
  name,
  group,
  also,
  keys: 'X',
  run: () => undefined,
});

const some = [
  command('Fit the wall', 'View'),
  command('Put in: Socket', 'Put in'),
  command('Show usual heights', 'View', 'reach writing'),
  command('Add a wall', 'Walls'),
];

describe('looking for a command', () => {
  const names = (typed: string) => commandsFor(typed, some).map(({ name }) => name);

  it('finds by the beginnings of words, in any order and case', () => {
    expect(names('WALL')).toEqual(['Add a wall', 'Fit the wall']);
    expect(names('so put')).toEqual(['Put in: Socket']);
    expect(names('ocket')).toEqual([]);
  });

  it('finds by words that the name does not hold, and by the group', () => {
    expect(names('reach')).toEqual(['Show usual heights']);
    expect(names('view heights')).toEqual(['Show usual heights']);
  });

  it('lists all, in the order of the groups, while nothing is typed', () => {
    expect(names(' ')).toEqual(['Add a wall', 'Put in: Socket', 'Fit the wall', 'Show usual heights']);
  });

  it('takes signs for no words at all', () => {
    expect(names('.*(')).toHaveLength(some.length);
  });
});

describe('keys', () => {
  it('are told in words', () => {
    expect(keyWords('Ctrl+Shift+Z')).toBe('Ctrl+Shift+Z');
    expect(keyWords('P S')).toBe('P then S');
    expect(keyWords('Shift+ArrowLeft')).toBe('Shift+Arrow left');
  });

  it('are written so that tinykeys reads the same presses', () => {
    expect(parseKeybinding(binding('P S'))).toEqual([
      [[], 'P'],
      [[], 'S'],
    ]);
    const [press] = parseKeybinding(binding('Alt+1'));
    expect(press?.[0]).toEqual(['Alt']);
    expect('Digit1').toMatch(press?.[1] as RegExp);
    expect('Digit12').not.toMatch(press?.[1] as RegExp);
  });
});
