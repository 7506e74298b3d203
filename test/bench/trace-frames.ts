import type { CDPSession } from '@playwright/test';

/** One event of the browser's trace (Trace Event Format): times in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string; readonly data?: { readonly type?: string } };
}

/** What the page's main thread did up to the handing over of one frame since that of the frame before, ms. */
export interface TracedFrame {
  /** Time that passed in its tasks: scripting, style, layout, painting and handing over to the compositor. */
  readonly busy: number;
  /** Processor time of the same, which other programs on the machine do not lengthen. */
  readonly processor: number;
}

/** Records the browser's own trace while `act` runs. */
export async function traced(cdp: CDPSession, act: () => Promise<void>): Promise<readonly TracedFrame[]> {
  const events: TraceEvent[] = [];
  const collect = ({ value }: { value: unknown[] }) => events.push(...(value as TraceEvent[]));
  cdp.on('Tracing.dataCollected', collect);
  await cdp.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'],
      excludedCategories: ['*'],
    },
  });
  await act();
  const complete = new Promise((resume) => cdp.once('Tracing.tracingComplete', resume));
  await cdp.send('Tracing.end');
  await complete;
  cdp.off('Tracing.dataCollected', collect);
  return framesOf(events);
}

/** Frames in which the page had something to do, on the main thread that ran most scripts. */
function framesOf(events: readonly TraceEvent[]): TracedFrame[] {
  const thread = busiestPage(events);
  const own = events.filter(({ pid, tid }) => `${pid}/${tid}` === thread).sort((a, b) => a.ts - b.ts);
  const tasks = own.filter(({ name, ph }) => name === 'RunTask' && ph === 'X');
  const handedOver = own.filter(({ name, ph }) => name === 'Commit' && ph === 'X').map(({ ts }) => ts);
  return handedOver.slice(1).map((until, i) => {
    const during = tasks.filter(({ ts }) => ts > handedOver[i]! && ts <= until);
    const sum = (of: (task: TraceEvent) => number) =>
      during.reduce((total, task) => total + of(task), 0) / 1000;
    return { busy: sum(({ dur = 0 }) => dur), processor: sum(({ tdur = 0 }) => tdur) };
  });
}

function busiestPage(events: readonly TraceEvent[]): string {
  const counts = new Map<string, number>();
  for (const { name, pid, tid } of events) {
    if (name !== 'EventDispatch') continue;
    counts.set(`${pid}/${tid}`, (counts.get(`${pid}/${tid}`) ?? 0) + 1);
  }
  const [busiest] = [...counts].sort(([, a], [, b]) => b - a);
  if (!busiest) throw new Error('The trace holds no event of the page.');
  return busiest[0];
}
