import { benchmarkInstances } from '../cutting/benchmark-instances';
import type { PackingInstance } from '../cutting/instance-file';
import {
  packByArea,
  packByContact,
  packingFaults,
  packWithRestarts,
  type PackedPlates,
} from './peer-packers';
import { clocks, solveInstance } from './solve-instance';

/** CPU seconds, so that a busy machine gives nobody less. */
const clock = clocks.cpu;

interface Entry {
  readonly plates: number;
  readonly ms: number;
  readonly faults: readonly string[];
}

/** Prints our cutting and general-purpose packers side by side on the same instances, quarter turns allowed. */
export async function peersBench(): Promise<void> {
  const instances = benchmarkInstances();
  if (instances.length === 0) return;
  const lower = new Map<string, number>();
  const ours = (method: 'free' | 'edge-to-edge', seconds: number) => (instance: PackingInstance) => {
    const solved = solveInstance(instance, method, seconds, clock);
    lower.set(instance.id, solved.lower);
    return solved;
  };
  const peer = (pack: (instance: PackingInstance) => PackedPlates) => (instance: PackingInstance) => {
    const start = clock();
    const plates = pack(instance);
    return { plates: plates.length, ms: 1000 * (clock() - start), faults: packingFaults(instance, plates) };
  };
  const restarts = (seconds: number) =>
    peer((instance) => packWithRestarts(instance, lower.get(instance.id)!, seconds, clock));

  console.log(`${instances.length} classic instances; every layout verified; ms of the processor, mean`);
  line('', 'plates', 'ms', 'by class 1 to 10');
  for (const [title, solve] of [
    ['Lodeplan, free: first plan', ours('free', 0)],
    ['Lodeplan, edge to edge: first plan', ours('edge-to-edge', 0)],
    ['bin-packing-core, contact: one call', peer(packByContact)],
    ['maxrects-packer, largest area: one call', peer(packByArea)],
    ['Lodeplan, free: 0.1 s', ours('free', 0.1)],
    ['maxrects-packer, random restarts: 0.1 s', restarts(0.1)],
    ['Lodeplan, free: 1 s', ours('free', 1)],
    ['maxrects-packer, random restarts: 1 s', restarts(1)],
  ] as const) {
    const byClass = new Map<number | string, number>();
    const entries = instances.map((instance): Entry => {
      const entry = solve(instance);
      for (const fault of entry.faults) console.log(`FAULT ${title}, ${instance.id}: ${fault}`);
      byClass.set(instance.class, (byClass.get(instance.class) ?? 0) + entry.plates);
      return entry;
    });
    const plates = entries.reduce((sum, entry) => sum + entry.plates, 0);
    const ms = entries.reduce((sum, entry) => sum + entry.ms, 0) / entries.length;
    line(title, String(plates), ms.toFixed(1), [...byClass.values()].join(' '));
  }
  const records = instances.reduce((sum, { record }) => sum + record.free, 0);
  const bounds = instances.reduce((sum, { bound }) => sum + bound, 0);
  line('best on record, every method together', String(records), '', '');
  line('published bound', String(bounds), '', '');
}

function line(title: string, plates: string, ms: string, byClass: string): void {
  console.log(`${title.padEnd(42)} ${plates.padStart(6)} ${ms.padStart(7)}  ${byClass}`);
}
