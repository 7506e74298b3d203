import { workOut } from '../../core/run/pipeline';
import { createCache } from '../../core/run/wall-cache';
import type { WorkedOut, WorkedWall } from '../../core/worked-out';
import { packWalls } from './changed-walls';
import type { WorkReply, WorkRequest } from './protocol';

const sliceMs = 8;
const cache = createCache();
let newest = 0;
let sent: readonly WorkedWall[] = [];

self.onmessage = ({ data }: MessageEvent<WorkRequest>) => {
  newest = data.request;
  void answer(data);
};

/** Works in slices and yields between them: a busy worker would not hear that it has been superseded. */
async function answer({ request, job, steps }: WorkRequest): Promise<void> {
  try {
    const search = workOut(job, { steps, cache });
    let sliceStart = performance.now();
    for (;;) {
      const { value, done } = search.next();
      if (value) send(request, value, done === true);
      if (done) return;
      if (performance.now() - sliceStart > sliceMs) {
        await new Promise((resume) => setTimeout(resume));
        if (request !== newest) return;
        sliceStart = performance.now();
      }
    }
  } catch (fault) {
    reply({ request, fault: String(fault) });
  }
}

function send(request: number, { walls, job: _job, ...rest }: WorkedOut, final: boolean): void {
  reply({ request, walls: packWalls(walls, sent), rest, final });
  sent = walls;
}

function reply(message: WorkReply): void {
  self.postMessage(message);
}
