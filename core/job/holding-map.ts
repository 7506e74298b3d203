import { changeJob } from './changes';
import { usualMagnet } from './hung-kinds';
import type { HoldingMapSettings } from './hung-schema';
import type { Job } from './schema';

/** What is not said is as usual: the magnet of new items, a hook of 30 mm, a light thing at reach height, not for the client. */
export function withUsual(settings: HoldingMapSettings = {}): Required<HoldingMapSettings> {
  return { ...usual, ...settings };
}

const usual = {
  magnet: usualMagnet,
  reach: 30,
  use: 'light-at-reach',
  forClient: false,
} as const satisfies Required<HoldingMapSettings>;

/** The map of all walls drawn for something else; what is as usual is left out of the file. */
export function setHoldingMap(job: Job, patch: Partial<HoldingMapSettings>): Job {
  const wanted = { ...job.holdingMap, ...patch };
  const said = Object.entries(wanted).filter(([key, value]) => usual[key as keyof typeof usual] !== value);
  if (JSON.stringify(wanted) === JSON.stringify(job.holdingMap)) return job;
  return changeJob(job, {
    holdingMap: said.length > 0 ? (Object.fromEntries(said) as HoldingMapSettings) : undefined,
  });
}
