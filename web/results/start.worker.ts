import { startScale, type StartScale } from '../../core/run/start-scale';
import type { StartReply, StartRequest } from './start-protocol';

let scale: StartScale | null = null;

/** Between two slices of the search it listens, so that a hand that moves is answered at once. */
self.onmessage = ({ data }: MessageEvent<StartRequest>) => {
  try {
    if ('start' in data) {
      if (scale) reply({ figures: scale.figuresAt(data.start) });
      return;
    }
    scale = startScale(data.job, data.wallId, data.zoneId);
    const { events, pattern, bottom } = scale ?? {};
    reply({ places: events && pattern && bottom !== undefined ? { events, pattern, bottom } : null });
    if (scale) search(scale.bestInSteps());
  } catch (fault) {
    reply({ fault: String(fault) });
  }
};

function search(steps: ReturnType<StartScale['bestInSteps']>): void {
  try {
    const { value, done } = steps.next();
    if (done) reply({ best: value });
    else setTimeout(search, 0, steps);
  } catch (fault) {
    reply({ fault: String(fault) });
  }
}

function reply(message: StartReply): void {
  self.postMessage(message);
}
