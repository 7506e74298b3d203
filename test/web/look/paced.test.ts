import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { emptyJob } from '../../../core/job/defaults';
import { OpenJob } from '../../../web/job/open-job.svelte';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** Moves the hand once a frame, then lets it rest; what there is to work out, each time that another is there. */
function dragged(open: OpenJob, names: readonly string[]): string[] {
  const found: string[] = [];
  const look = () => {
    const name = open.sound?.job.name ?? 'nothing';
    if (name !== found.at(-1)) found.push(name);
  };
  for (const name of names) {
    open.preview((job) => ({ ...job, name }));
    look();
    vi.advanceTimersByTime(16);
  }
  vi.advanceTimersByTime(100);
  look();
  return found;
}

describe('what a hand leads to', () => {
  it('is worked out at a pace, and not left behind when the hand rests', () => {
    const names = Array.from({ length: 40 }, (_, i) => `at ${i}`);
    const found = dragged(new OpenJob(emptyJob('before')), names);
    expect(found.length).toBeGreaterThan(5);
    expect(found.length).toBeLessThan(10);
    expect(found[0]).toBe('at 0');
    expect(found.at(-1)).toBe('at 39');
  });

  it('is not worked out while it would be refused', () => {
    const open = new OpenJob(emptyJob('before'), ({ name }) =>
      name === 'bad' ? 'It crosses itself.' : null,
    );
    const bad = Array.from({ length: 20 }, () => 'bad');
    expect(dragged(open, [...bad, 'good'])).toEqual(['nothing', 'good']);
  });

  it('is worked out at once when the hand lets go', () => {
    const open = new OpenJob(emptyJob('before'));
    open.preview((job) => ({ ...job, name: 'on the way' }));
    expect(open.sound?.job.name).toBe('on the way');
    open.preview((job) => ({ ...job, name: 'there' }));
    expect(open.sound?.job.name).toBe('on the way');
    open.commit('Move');
    expect(open.sound?.job.name).toBe('there');
    expect(open.sound?.version).toBe(open.version);
  });
});
