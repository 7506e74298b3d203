import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { emptyJob } from '../../../core/job/defaults';
import { Results } from '../../../web/results/results.svelte';
import type { WorkReply, WorkRequest } from '../../../web/results/protocol';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** A worker that notes what it is asked and answers when it is told to. */
function askable() {
  const asked: WorkRequest[] = [];
  const worker = { postMessage: (request: WorkRequest) => asked.push(request) } as unknown as Worker;
  const results = new Results(worker);
  const answer = () => {
    const reply = { request: asked.at(-1)!.request, walls: [], rest: {}, final: true };
    worker.onmessage!({ data: reply as unknown as WorkReply } as MessageEvent);
  };
  return { asked, results, answer };
}

const job = emptyJob('Studio');

function drag(results: Results, from: number, frames: number) {
  for (let i = 0; i < frames; i++) {
    results.ask(job, from + i, 0, { held: true });
    vi.advanceTimersByTime(16);
  }
}

describe('asking while a hand holds something', () => {
  it('is done every frame where answers come within one', () => {
    const { asked, results, answer } = askable();
    results.ask(job, 1, 0);
    vi.advanceTimersByTime(5);
    answer();
    drag(results, 2, 20);
    expect(asked).toHaveLength(21);
  });

  it('keeps to a pace where answers take longer, and asks about the newest job', () => {
    const { asked, results, answer } = askable();
    results.ask(job, 1, 0);
    vi.advanceTimersByTime(60);
    answer();
    drag(results, 2, 40);
    expect(asked.length).toBeGreaterThan(4);
    expect(asked.length).toBeLessThan(10);
    vi.advanceTimersByTime(200);
    answer();
    expect(results.version).toBe(41);
  });

  it('asks at once when the hand lets go, and only once', () => {
    const { asked, results, answer } = askable();
    results.ask(job, 1, 0);
    vi.advanceTimersByTime(60);
    answer();
    drag(results, 2, 3);
    const before = asked.length;
    results.ask(job, 9, 0);
    expect(asked).toHaveLength(before + 1);
    vi.advanceTimersByTime(500);
    expect(asked).toHaveLength(before + 1);
    answer();
    expect(results.version).toBe(9);
  });
});
