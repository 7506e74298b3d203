import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ReadyQueue } from '../../core/programme/ready-queue';

describe('what is ready', () => {
  it('comes out by urgency, then by number, also while more is added', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 60 }),
        fc.nat(60),
        (urgency, early) => {
          const queue = new ReadyQueue(urgency);
          const waiting = new Set<number>();
          const taken: number[] = [];
          const expected: number[] = [];
          const takeOne = () => {
            const [least] = [...waiting].sort((a, b) => urgency[a]! - urgency[b]! || a - b);
            if (least !== undefined) expected.push(least);
            waiting.delete(least!);
            const next = queue.next();
            if (next !== undefined) taken.push(next);
          };
          urgency.forEach((_, number) => {
            queue.add(number);
            waiting.add(number);
            if (number % 3 === early % 3) takeOne();
          });
          while (waiting.size > 0) takeOne();
          expect(taken).toEqual(expected);
          expect(taken).toHaveLength(urgency.length);
          expect(queue.next()).toBeUndefined();
        },
      ),
      { numRuns: 300, seed: 61 },
    );
  });
});
