import { hungKindInWords } from '../hung-kinds';
import type { HungItem, HungKind, PeopleBelow } from '../hung-schema';
import type { MagnetRecord, PullTestRecord } from '../magnet-schema';
import { nameOfHung, nameOfZone, sentence } from '../names';
import { kindWordsOfPeople } from '../people-below';
import type { Job, Wall, Zone } from '../schema';
import type { MmBox } from '../shape';
import { figure, isSame, joined, told, type Difference, type Says } from './difference';
import { lockWords } from './field-words';
import { fieldDifferences, type FieldList } from './fields';
import { matchLists } from './match';
import { listDifferences, matchZones, pointInWords } from './objects';
import { boxDifferences } from './place';

/* What hangs on walls, by what magnets, what was tested there, and where people are below. */

const kilograms = (of: unknown) => `${figure3(of as number)} kg`;
const newtons = (of: unknown) => `${figure3(of as number)} N`;
const words = (of: unknown) => String(of).replaceAll('-', ' ');

const itemWords: FieldList = {
  kind: { label: 'kind', say: (kind) => hungKindInWords(String(kind)) },
  name: { label: 'name' },
  depth: { label: 'depth', unit: 'mm', usual: 0 },
  weight: { label: 'weight', say: kilograms, absent: 'not known' },
  reach: { label: 'reach of its weight', unit: 'mm', absent: 'half its depth' },
  load: { label: 'load', say: loadInWords },
  pull: { label: 'pull on it', say: pullInWords },
  magnets: { label: 'magnets', say: magnetsInWords },
  restsOnWall: {
    label: 'lower edge',
    usual: false,
    whole: (to) => (to ? 'has its lower edge on the wall now' : 'no longer has its lower edge on the wall'),
  },
  use: { label: 'use', say: words, absent: 'as its kind' },
  condition: { label: 'face under its magnets', say: words, absent: 'as the finish usually is' },
  friction: { label: 'friction measured', say: (of) => figure3(of as number) },
  proof: { label: 'weight borne in a test', say: kilograms },
  stop: {
    label: 'stop',
    usual: false,
    whole: (to) => (to ? 'has a mechanical stop now' : 'no longer has a mechanical stop'),
  },
  fixingPoints: { label: 'screwed to', say: (of) => (of as string[]).join(', ') || 'nothing' },
  marking: {
    label: 'moved about on',
    say: (of) => {
      const { zone, marking } = of as NonNullable<HungItem['marking']>;
      return `marking ${marking} of zone ${zone}`;
    },
  },
  pieces: { label: 'pieces alike', usual: 1 },
  locked: lockWords,
};

export function hungDifferences(before: Wall, after: Wall): Difference[] {
  const box = ({ x, y, width, height }: HungItem): MmBox => ({ x, y, width, height });
  const matched = matchLists(before.hung ?? [], after.hung ?? [], (a, b) =>
    a.kind === b.kind && isSame({ ...a, id: '' }, { ...b, id: '' }) ? 0 : undefined,
  );
  const size = (item: HungItem) =>
    `${figure(item.width)} × ${figure(item.height)} mm at ${pointInWords([item.x, item.y])}`;
  return listDifferences(matched, 'hung', after.id, nameOfHung, box, size, (was, is) => [
    ...boxDifferences(box(was), box(is)),
    ...fieldDifferences(was, is, itemWords, ['id', 'x', 'y', 'width', 'height']),
  ]);
}

const peopleWords: FieldList = {
  kind: { label: 'who', say: (kind) => kindWordsOfPeople[kind as PeopleBelow['kind']] },
  y: { label: 'height', unit: 'mm', usual: 0 },
};

/** That nobody has said, and that nobody is there, are not the same. */
export function peopleDifferences(before: Wall, after: Wall): Difference[] {
  const [was, is] = [before.peopleBelow, after.peopleBelow];
  const nobody = (list: typeof is) =>
    list === undefined ? 'not said' : list.length === 0 ? 'nobody' : 'said';
  const name = ({ kind, id }: PeopleBelow) => `${kindWordsOfPeople[kind]} ${id} below`;
  const box = ({ x, y = 0, width }: PeopleBelow): MmBox => ({ x, y, width, height: 100 });
  const said: Difference[] =
    nobody(was) === nobody(is) || (was?.length && is?.length)
      ? []
      : [
          {
            kind: 'changed',
            subject: 'wall',
            wall: after.id,
            text: `People below wall ${after.id}: ${nobody(is)} instead of ${nobody(was)}.`,
            places: [],
          },
        ];
  const matched = matchLists(was ?? [], is ?? [], (a, b) =>
    isSame({ ...a, id: '' }, { ...b, id: '' }) ? 0 : undefined,
  );
  const size = ({ x, width }: PeopleBelow) => `from ${figure(x)} to ${figure(x + width)} mm`;
  return [
    ...said,
    ...listDifferences(matched, 'wall', after.id, name, box, size, (from, to) => [
      ...stretchDifferences(from, to),
      ...fieldDifferences(from, to, peopleWords, ['id', 'x', 'width']),
    ]),
  ];
}

function stretchDifferences(was: PeopleBelow, is: PeopleBelow): Says[] {
  const flat = ({ x, width }: PeopleBelow): MmBox => ({ x, y: 0, width, height: 1 });
  return boxDifferences(flat(was), flat(is)).map(({ kind, says }) => ({
    kind,
    says: kind === 'moved' ? says : `runs from ${figure(is.x)} to ${figure(is.x + is.width)} mm now`,
  }));
}

const testWords: FieldList = {
  magnet: { label: 'magnet', say: String },
  between: { label: 'what lay between', unit: 'mm', usual: 0 },
  readings: { label: 'readings', say: readingsInWords },
  date: { label: 'day', say: String, absent: 'not said' },
  by: { label: 'by whom', absent: 'not said' },
};

/** Tests of zones that both jobs have. */
export function pullTestDifferences(before: Wall, after: Wall): Difference[] {
  return matchZones(before, after).pairs.flatMap(([was, is]) => {
    const matched = matchLists(was.pullTests ?? [], is.pullTests ?? [], (a, b) =>
      isSame({ ...a, id: '' }, { ...b, id: '' }) ? 0 : undefined,
    );
    const name = ({ id }: PullTestRecord) => `pull test ${id} of ${nameOfZone(is)}`;
    const size = ({ magnet, readings }: PullTestRecord) => `${magnet} at ${readingsInWords(readings)}`;
    return listDifferences(
      matched,
      'zone',
      after.id,
      name,
      () => boxOfZone(is),
      size,
      (from, to) => fieldDifferences(from, to, testWords, ['id']),
    ).map((one) => ({ ...one, object: is.id, places: [] }));
  });
}

function boxOfZone(_: Zone): MmBox {
  return { x: 0, y: 0, width: 0, height: 0 };
}

const mm = (of: unknown) => `${figure3(of as number)} mm`;
const magnetWords: FieldList = {
  name: { label: 'name' },
  shape: { label: 'shape', say: String },
  diameter: { label: 'diameter or shorter side', say: mm },
  length: { label: 'longer side', say: mm },
  bore: { label: 'bore', say: mm },
  cup: { label: 'steel cup', say: cupInWords },
  height: { label: 'height', say: mm },
  material: { label: 'material', say: String },
  remanence: { label: 'remanence', say: (of) => `${String(of)} T` },
  recoil: { label: 'recoil permeability', say: String },
  contact: { label: 'touches the wall with', say: String },
  cover: { label: 'cover', say: mm },
  rated: { label: 'maker’s pull', say: ratedInWords },
  ratedPerArea: { label: 'maker’s pull by area', say: (of) => `${String(of)} N/cm²` },
  price: { label: 'price' },
};

/** Magnets of the job's own that came, went or are others now. */
export function magnetDifferences(before: Job, after: Job): Difference[] {
  const { pairs, added, removed } = matchLists(before.magnets ?? [], after.magnets ?? [], (was, is) =>
    isSame({ ...was, id: '' }, { ...is, id: '' }) ? 0 : undefined,
  );
  const name = ({ id, name: called }: MagnetRecord) => `Magnet ${id} (${called})`;
  const size = ({ shape, diameter, height }: MagnetRecord) =>
    `${shape} ${figure3(diameter)} × ${figure3(height)} mm`;
  const say = (kind: Difference['kind'], magnet: MagnetRecord, says: string): Difference => ({
    kind,
    subject: 'job',
    object: magnet.id,
    text: told(name(magnet), says),
    places: [],
  });
  return [
    ...pairs.flatMap(([was, is]) => [
      ...(was.id === is.id ? [] : [say('changed', is, `was listed as ${was.id} before`)]),
      ...fieldDifferences(was, is, magnetWords, ['id']).map(({ says }) => say('changed', is, says)),
    ]),
    ...added.map((magnet) => say('added', magnet, `is new: ${size(magnet)}`)),
    ...removed.map((magnet) => say('removed', magnet, `is gone: it was ${size(magnet)}`)),
  ];
}

/** Kinds of hung item of the user's own. */
export function hungKindDifferences(before: Job, after: Job): Difference[] {
  const named = (job: Job) => (job.hungKinds ?? []).map((kind) => ({ id: kind.name, kind }));
  const { pairs, added, removed } = matchLists(named(before), named(after), (was, is) =>
    isSame({ ...was.kind, name: '' }, { ...is.kind, name: '' }) ? 0 : undefined,
  );
  const title = ({ name }: HungKind) => `Kind of hung item “${name}”`;
  const size = ({ item: { width, height } }: HungKind) => `${figure(width)} × ${figure(height)} mm`;
  const say = (kind: Difference['kind'], text: string): Difference => ({
    kind,
    subject: 'job',
    text: sentence(text),
    places: [],
  });
  const sizes = { width: { label: 'width', unit: 'mm' }, height: { label: 'height', unit: 'mm' } } as const;
  const pieceWords: FieldList = {
    piece: {
      label: 'piece',
      usual: false,
      whole: (to) => (to ? 'is moved about on a marking now' : 'is no longer moved about on a marking'),
    },
  };
  return [
    ...pairs.flatMap(([{ kind: was }, { kind: is }]) => [
      ...(was.name === is.name ? [] : [say('changed', told(title(is), `was called “${was.name}” before`))]),
      ...[
        ...fieldDifferences(was.item, is.item, { ...sizes, ...itemWords }),
        ...fieldDifferences(was, is, pieceWords, ['name', 'item']),
      ].map(({ says }) => say('changed', told(title(is), says))),
    ]),
    ...added.map(({ kind }) => say('added', `${title(kind)} is new: ${size(kind)}.`)),
    ...removed.map(({ kind }) => say('removed', `${title(kind)} is gone: it was ${size(kind)}.`)),
  ];
}

/** Weights and magnets are told to a thousandth. */
function figure3(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function loadInWords(of: unknown): string {
  const { weight, reach, x } = of as NonNullable<HungItem['load']>;
  return `${kilograms(weight)} ${figure(reach)} mm from the wall${x ? `, ${figure(x)} mm off its middle` : ''}`;
}

function pullInWords(of: unknown): string {
  const { force, angle, reach, x, y } = of as NonNullable<HungItem['pull']>;
  return joined([
    `${newtons(force)} at ${figure(angle)}° from straight down`,
    `${figure(reach)} mm from the wall`,
    x ? `${figure(x)} mm off its middle` : '',
    y === undefined ? '' : `${figure(y)} mm above its lower edge`,
  ]);
}

function magnetsInWords(of: unknown): string {
  const { magnet, places, between } = of as NonNullable<HungItem['magnets']>;
  const at = places.slice(0, 6).map(pointInWords);
  const more = places.length > 6 ? ` and ${places.length - 6} more` : '';
  return `${places.length} × ${magnet}${places.length > 0 ? ` at ${at.join(', ')}${more}` : ''}${between ? ` over ${figure(between)} mm` : ''}`;
}

function readingsInWords(of: unknown): string {
  return (of as number[]).map(newtons).join(', ');
}

function ratedInWords(of: unknown): string {
  const { force, thickness, gap } = of as NonNullable<MagnetRecord['rated']>;
  return `${newtons(force)} on ${mm(thickness)} across ${mm(gap)}`;
}

function cupInWords(of: unknown): string {
  const parts = { magnet: 'magnet', wall: 'wall', floor: 'floor', recess: 'behind the rim' } as const;
  const cup = of as NonNullable<MagnetRecord['cup']>;
  return (['magnet', 'wall', 'floor', 'recess'] as const)
    .flatMap((part) => (cup[part] === undefined ? [] : [`${parts[part]} ${mm(cup[part])}`]))
    .join(', ');
}
