import { expect, it } from 'vitest';
import { NewestOnly } from '../../../web/results/newest-only';

it('asks one question at a time, and of those that came meanwhile only the newest', () => {
  const asked: number[] = [];
  const looks = new NewestOnly<number>((question) => asked.push(question));
  for (const question of [1, 2, 3, 4]) looks.ask(question);
  expect(asked).toEqual([1]);
  looks.answered();
  expect(asked).toEqual([1, 4]);
  looks.answered();
  expect(asked).toEqual([1, 4]);
  looks.ask(5);
  looks.ask(6);
  looks.forget();
  looks.ask(7);
  expect(asked).toEqual([1, 4, 5, 7]);
});
