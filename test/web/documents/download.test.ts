import { describe, expect, it } from 'vitest';
import { fileName } from '../../../web/documents/download';

describe('file names', () => {
  it.each([
    ['Reading room', 'Reading room'],
    ['Hall 3/4: north', 'Hall 3 4 north'],
    ['  ..hidden.. ', 'hidden'],
    ['Étage 2', 'Étage 2'],
    ['a\u0000b\nc', 'a b c'],
    ['///', 'Lodeplan job'],
    ['', 'Lodeplan job'],
  ])('%j', (name, expected) => {
    expect(fileName(name)).toBe(expected);
  });

  it('are never longer than 100 characters', () => {
    expect(fileName('n'.repeat(500))).toHaveLength(100);
  });
});
