import { ownKindsOf } from '../fitting-kinds';
import type { Job, OwnKind } from '../schema';
import { figure, isSame, told, type Difference } from './difference';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists } from './match';

const kindWords: FieldList = {
  round: { label: 'form', usual: false, say: (round) => (round ? 'round' : 'rectangular') },
  width: { label: 'width', unit: 'mm' },
  height: { label: 'height', unit: 'mm', absent: 'as its width' },
  floor: { label: 'height above the floor', unit: 'mm' },
  clearance: { label: 'clearance', unit: 'mm' },
  depth: { label: 'depth', unit: 'mm', usual: 0 },
  electric: { label: 'electric', usual: false },
};

/** Kinds of fitting that came, went or have other figures; one under another name is the same if nothing else has changed. */
export function fittingKindDifferences(before: Job, after: Job): Difference[] {
  const { pairs, added, removed } = matchLists(named(before), named(after), (was, is) =>
    isSame({ ...was.kind, name: '' }, { ...is.kind, name: '' }) ? 0 : undefined,
  );
  return [
    ...pairs.flatMap(([{ kind: was }, { kind: is }]) => {
      const renamed = was.name === is.name ? [] : [`was called “${was.name}” before`];
      const fields = fieldDifferences(was, is, kindWords, ['name']).map(({ says }) => says);
      return [...renamed, ...fields].map((says) => say('changed', told(title(is), says)));
    }),
    ...added.map(({ kind }) => say('added', `${title(kind)} is new: ${size(kind)}.`)),
    ...removed.map(({ kind }) => say('removed', `${title(kind)} is gone: it was ${size(kind)}.`)),
  ];
}

function named(job: Job): { id: string; kind: OwnKind }[] {
  return ownKindsOf(job).map((kind) => ({ id: kind.name, kind }));
}

function title({ name }: OwnKind): string {
  return `Kind of fitting “${name}”`;
}

function size({ round, width, height = width }: OwnKind): string {
  return round ? `Ø ${figure(width)} mm` : `${figure(width)} × ${figure(height)} mm`;
}

function say(kind: Difference['kind'], text: string): Difference {
  return { kind, subject: 'job', text, places: [] };
}
