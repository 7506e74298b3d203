import { changeHandChoice, removeHandChoice } from '../../core/job/by-hand';
import { handFigures, type HandFigures } from '../../core/run/hand-figures';
import type { HandReply, HandRequest } from './hand-protocol';

let asked: Extract<HandRequest, { job: unknown }> | null = null;

/** The choice that moves is answered before what the zone comes to without it, which stays the same. */
self.onmessage = ({ data }: MessageEvent<HandRequest>) => {
  if ('job' in data) {
    asked = data;
    const { job, wallId, zoneId, id } = data;
    weigh(handFigures(removeHandChoice(job, wallId, zoneId, id), wallId, zoneId), (without) => ({ without }));
  } else if (asked) {
    const { job, wallId, zoneId, id } = asked;
    const moved = changeHandChoice(job, wallId, zoneId, id, data.choice);
    weigh(handFigures(moved, wallId, zoneId), (figures) => ({ figures }));
  }
};

/** In slices, so that it listens in between. */
function weigh(
  steps: ReturnType<typeof handFigures>,
  tell: (figures: HandFigures | null) => HandReply,
): void {
  try {
    const { value, done } = steps.next();
    if (done) self.postMessage(tell(value));
    else setTimeout(weigh, 0, steps, tell);
  } catch (fault) {
    self.postMessage({ fault: String(fault) } satisfies HandReply);
  }
}
