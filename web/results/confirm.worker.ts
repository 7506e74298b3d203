import { confirmHung } from '../../core/holding/confirm-hung';
import type { ConfirmReply, ConfirmRequest } from './confirm-protocol';

/** Whoever no longer wants the answer ends the worker, so that it need not listen while it works. */
self.onmessage = ({ data: { job, wall, zones, id } }: MessageEvent<ConfirmRequest>) => {
  try {
    reply({ found: confirmHung(job, wall, zones, id) ?? null });
  } catch (fault) {
    reply({ fault: String(fault) });
  }
};

function reply(message: ConfirmReply): void {
  self.postMessage(message);
}
