import { expect, it } from 'vitest';
import { freeRevision, nextRevision } from '../../core/run/next-revision';

it.each([
  ['', 'A'],
  ['A', 'B'],
  ['H', 'J'],
  ['N', 'P'],
  ['Z', 'AA'],
  ['AH', 'AJ'],
  ['AZ', 'BA'],
  ['ZZ', 'AAA'],
  ['1', '2'],
  ['P09', 'P10'],
  ['draft', 'draft 2'],
])('after revision "%s" comes %s', (now, next) => {
  expect(nextRevision(now)).toBe(next);
});

it('passes over revisions that were issued', () => {
  expect(freeRevision('A', [{ id: 'A' }, { id: 'B' }])).toBe('C');
  expect(freeRevision('', [])).toBe('A');
});
