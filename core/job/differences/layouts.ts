import { nameOfZone, sentence } from '../names';
import type { Job, Layout, Wall } from '../schema';
import { boxOfObject } from '../shape';
import { figure, told, type Difference } from './difference';
import { fieldDifferences, type FieldList } from './fields';
import { matchZones } from './objects';

/** Layouts of the zones that both walls have. */
export function layoutDifferences(jobs: readonly [Job, Job], before: Wall, after: Wall): Difference[] {
  const words = layoutWords(jobs);
  return matchZones(before, after).pairs.flatMap(([was, is]) => {
    const say = (says: string): Difference => ({
      kind: 'changed',
      subject: 'zone',
      wall: after.id,
      object: is.id,
      text: told(sentence(nameOfZone(is)), says),
      places: [boxOfObject(is)],
    });
    if (!was.layout && !is.layout) return [];
    if (!was.layout) return [say('is laid with panels now')];
    if (!is.layout) return [say('is no longer laid with panels')];
    return fieldDifferences(was.layout, is.layout, words).map(({ says }) => say(says));
  });
}

function layoutWords(jobs: readonly [Job, Job]): FieldList {
  const stock = (id: unknown) => {
    const sheet = jobs.flatMap((job) => job.stock).find((entry) => entry.id === id);
    return sheet?.name || String(id);
  };
  const several = (ids: unknown) =>
    Array.isArray(ids) && ids.length > 0 ? ids.map(stock).join(', ') : 'none';
  return {
    stock: { label: 'stock sheet', say: stock },
    stocks: { label: 'mixed formats', say: several },
    cutFrom: { label: 'stock for cut panels', say: several },
    start: { label: 'start', say: startInWords },
    turned: { label: 'stock sheet turned' },
    jointGap: { label: 'joint gap', unit: 'mm' },
    stagger: { label: 'stagger' },
    leastWidth: { label: 'least width', unit: 'mm' },
    clearOfCorners: { label: 'distance of joints from corners', unit: 'mm', usual: 0 },
    clearOfBoardJoints: { label: 'distance of joints from board joints', unit: 'mm', usual: 0 },
    startEachPart: { label: 'start for each part', usual: false },
    redivide: { label: 'sharing out of slivers' },
    leastArea: { label: 'least area', unit: 'mm²' },
  };
}

function startInWords(start: unknown): string {
  if (typeof start === 'string') return `“${start.replaceAll('-', ' ')}”`;
  const { x, y } = start as Exclude<Layout['start'], string>;
  return `at (${figure(x)}, ${figure(y)})`;
}
