import { flushSync } from 'svelte';
import { describe, expect, it, vi } from 'vitest';
import { demoJob } from '../../../core/job/demo';
import type { Job } from '../../../core/job/schema';
import { priceJob } from '../../../core/offer/price-job';
import { workOutFully } from '../../../core/run/pipeline';
import type { OpenJob } from '../../../web/job/open-job.svelte';
import { Priced } from '../../../web/price/priced.svelte';
import type { Results } from '../../../web/results/results.svelte';

const worked = workOutFully(demoJob());
const dearer = (job: Job): Job => ({ ...job, currency: 'SEK' });

async function loaded(): Promise<Priced> {
  const priced = new Priced({ job: worked.job } as OpenJob, { worked } as Results);
  priced.load();
  await vi.waitFor(() => {
    flushSync();
    expect(priced.of('probe', worked, worked.job)).not.toBeNull();
  });
  return priced;
}

describe('prices on the screen', () => {
  it('come later than they are asked for, as the core reckons them', async () => {
    const priced = await loaded();
    expect(priced.of('one', worked, worked.job)).toBeNull();
    await vi.waitFor(() => expect(priced.of('one', worked, worked.job)).not.toBeNull());
    expect(priced.of('one', worked, worked.job)!.offer.gross).toBe(priceJob(worked).offer.gross);
  });

  it('stay as they were until a newer answer stands, and the newest question alone is answered', async () => {
    const priced = await loaded();
    await vi.waitFor(() => expect(priced.of('one', worked, worked.job)).not.toBeNull());
    const first = priced.of('one', worked, worked.job);
    const other = { ...worked.job, currency: 'GBP' };
    expect(priced.of('one', worked, other)).toBe(first);
    expect(priced.of('one', worked, dearer(worked.job))).toBe(first);
    await vi.waitFor(() => expect(priced.of('one', worked, dearer(worked.job))!.offer.currency).toBe('SEK'));
  });

  it('of another job under the same place are not the first one’s', async () => {
    const priced = await loaded();
    await vi.waitFor(() => expect(priced.of('one', worked, worked.job)).not.toBeNull());
    const next = { ...worked, job: { ...worked.job, name: 'Another' } };
    expect(priced.of('one', next, next.job)).toBeNull();
  });
});
