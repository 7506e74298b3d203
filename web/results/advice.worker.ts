import { zoneAdviceInSteps } from '../../core/run/zone-advice';
import type { AdviceReply, AdviceRequest } from './advice-protocol';

/** Whoever no longer wants the answer ends the worker, so that it need not listen while it works. */
self.onmessage = ({ data }: MessageEvent<AdviceRequest>) => {
  try {
    const steps = zoneAdviceInSteps(data);
    for (;;) {
      const { value, done } = steps.next();
      if (done) return reply({ advised: value });
      if (value !== undefined) reply({ considered: value });
    }
  } catch (fault) {
    reply({ fault: String(fault) });
  }
};

function reply(message: AdviceReply): void {
  self.postMessage(message);
}
