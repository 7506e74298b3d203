import { fittingKinds, openingKinds, type OwnKind } from './schema';
import { mostObjectsOfAKind } from './limits';
import { unitInWords, type LengthUnits } from '../lengths';
import { readExactLength, unitsNamedIn } from './exact-lengths';
import { textHeading } from './objects-text';
import { readJobObject } from './read';
import { readKind } from './read-kind-text';
import type { ObjectRef, WallObject } from './shape';
import {
  plainJob,
  pointOf,
  readAlso,
  textOf,
  verticesOf,
  withoutPath,
  type Fault,
  type Fields,
} from './text-values';

export interface ReadObject {
  /** Where its entry begins, from 1. */
  readonly line: number;
  readonly as: ObjectRef['kind'];
  readonly object: WallObject;
  /** The stock sheet that a zone was laid with, as the other job had it. */
  readonly sheet: { readonly width: number; readonly height: number } | null;
}

export interface LineFault {
  readonly line: number;
  readonly text: string;
}

export interface ReadObjects {
  readonly objects: readonly ReadObject[];
  /** Kinds of fitting that the other job has made itself. */
  readonly kinds: readonly OwnKind[];
  readonly faults: readonly LineFault[];
}

/** Characters; a wall full of objects has a tenth of this. */
const longestText = 2_000_000;

/** Whether a text says that it holds objects of ours, be it quoted in a letter or not. */
export function isObjectsText(text: string): boolean {
  return /^[>\s\uFEFF]*Lodeplan objects\b/.test(text.slice(0, 2000));
}

/**
 * Objects from a text as `writeObjects` makes it. Never throws: an entry that cannot be read is a fault that says on which
 * line and why, the others are read all the same. Every object has passed the same checks as one of a job file.
 */
export function readObjects(text: string): ReadObjects {
  if (text.length > longestText) {
    return none(
      `It has ${text.length} characters; at most ${longestText} are read. Copy fewer objects at once.`,
    );
  }
  if (!isObjectsText(text))
    return none(`It does not begin with “${textHeading}”, so it holds no objects to read.`);
  const entries = entriesOf(text);
  if (entries.length === 0) return none('No object stands under the heading: each begins with “- ”.');
  if (entries.length > mostObjectsOfAKind) {
    return none(`It holds ${entries.length} objects; at most ${mostObjectsOfAKind} are read at once.`);
  }
  const units = unitsNamedIn(headingOf(text));
  const objects: ReadObject[] = [];
  const kinds: OwnKind[] = [];
  const faults: LineFault[] = [];
  for (const { line, words } of entries) {
    const read = readEntry(words, units);
    if ('fault' in read) faults.push({ line, text: read.fault });
    else if ('ownKind' in read) kinds.push(read.ownKind);
    else objects.push({ line, ...read });
  }
  return { objects, kinds, faults };
}

function none(text: string): ReadObjects {
  return { objects: [], kinds: [], faults: [{ line: 1, text }] };
}

/** All that stands before the first entry; a letter may have broken it. */
function headingOf(text: string): string {
  return text.split(/^[>\s]*[-–•]\s/m)[0]!.replace(/[>\s]+/g, ' ');
}

/** What begins with "- " and goes on until the next that does, quotation marks of letters taken off. */
function entriesOf(text: string): { line: number; words: string }[] {
  const isCurly = !text.includes('"') && /[“”]/.test(text);
  const lines = (isCurly ? text.replace(/[“”„]/g, '"') : text).replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const isQuoted = /^\s*>/.test(lines.find((line) => line.trim() !== '') ?? '');
  const entries: { line: number; words: string[] }[] = [];
  lines.forEach((raw, i) => {
    const line = (isQuoted ? raw.replace(/^(\s*>)+ ?/, '') : raw).replace(/^\s+|\s+$/g, '');
    if (/^[-–•]\s/.test(line)) entries.push({ line: i + 1, words: [line.slice(1).trim()] });
    // What follows an empty line is the letter again.
    else if (line !== '') entries.at(-1)?.words.push(line);
  });
  return entries.map(({ line, words }) => ({ line, words: words.join(' ') }));
}

type Entry = Pick<ReadObject, 'as' | 'object' | 'sheet'>;

const quoted = String.raw`"(?:[^"\\]|\\.)*"`;
const headPattern = new RegExp(
  String.raw`^([\p{L}-]{1,40})\s+(${quoted}|[^\s":;]+)\s*(${quoted})?\s*:\s*`,
  'u',
);

function readEntry(words: string, units: LengthUnits): Entry | { ownKind: OwnKind } | Fault {
  const head = headPattern.exec(words);
  if (!head) return { fault: 'write what it is, its mark and a colon, such as “socket K1:”.' };
  const [all, word, mark, title] = head;
  if (word === 'kind') return readKind(textOf(mark!), words.slice(all.length), units);
  const kind = kindOf(word!);
  if (!kind) return { fault: `“${word!.slice(0, 40)}” is no kind of opening or fitting, nor a zone.` };
  const id = textOf(mark!);
  const name = title === undefined ? undefined : textOf(title);
  if (id === null || name === null)
    return { fault: 'a text between quotation marks cannot be read; look at its marks.' };
  const { as, kind: kindName } = kind;
  const usual: Fields =
    as === 'zone' ? { name: '', holes: [] } : as === 'hung' ? {} : { kind: kindName, clearance: 0 };
  const fields: Fields = { ...usual, ...(name !== undefined && { name }) };
  const rest = readClauses(words.slice(all.length), fields, units);
  if ('fault' in rest) return rest;
  return checked(as, { ...fields, id }, rest.sheet);
}

function kindOf(word: string): { as: ObjectRef['kind']; kind: string } | null {
  if (word === 'zone' || word === 'hung') return { as: word, kind: '' };
  if (word === 'opening' || word === 'fitting') return { as: word, kind: 'free' };
  if ((openingKinds as readonly string[]).includes(word)) return { as: 'opening', kind: word };
  if ((fittingKinds as readonly string[]).includes(word)) return { as: 'fitting', kind: word };
  return null;
}

function readClauses(
  text: string,
  fields: Fields,
  units: LengthUnits,
): { sheet: ReadObject['sheet'] } | Fault {
  let sheet: ReadObject['sheet'] = null;
  for (let left = text.trim(); left !== '';) {
    const also = /^also\s*(\{.*)$/s.exec(left);
    if (also) return readAlso(also[1]!, fields) ?? { sheet };
    const end = left.indexOf(';');
    const clause = (end < 0 ? left : left.slice(0, end)).trim();
    left = end < 0 ? '' : left.slice(end + 1).trim();
    if (clause === '') continue;
    const size = /^sheets\s+(.+?)\s*[×x]\s*(.+)$/
      .exec(clause)
      ?.slice(1)
      .map((side) => readExactLength(side, units));
    if (size) sheet = { width: size[0] ?? NaN, height: size[1] ?? NaN };
    else {
      const fault = readClause(clause, fields, units);
      if (fault) return { fault };
    }
  }
  return { sheet };
}

const figureFields: Readonly<Record<string, string>> = {
  left: 'x',
  floor: 'y',
  width: 'width',
  height: 'height',
  clearance: 'clearance',
  handle: 'handle',
};
const wordFields: Readonly<Record<string, string>> = {
  hinges: 'hinge',
  opens: 'swing',
  'build-up': 'buildUp',
};

/** @returns what is wrong with it */
function readClause(clause: string, fields: Fields, units: LengthUnits): string | null {
  if (clause === 'locked') {
    fields.locked = true;
    return null;
  }
  const named = /^kind\s+("(?:[^"\\]|\\.)*")$/.exec(clause);
  if (named) {
    fields.kind = textOf(named[1]!);
    return null;
  }
  const [, word = '', rest = ''] = /^(\S+)\s*([\s\S]*)$/.exec(clause)!;
  const wanted = `“${clause.slice(0, 60)}”`;
  if (Object.hasOwn(wordFields, word)) fields[wordFields[word]!] = rest;
  else if (Object.hasOwn(figureFields, word)) {
    const figure = readExactLength(rest, units);
    if (figure === null) return `${wanted}: a figure in ${unitInWords(units)} has to follow “${word}”.`;
    fields[figureFields[word]!] = figure;
  } else if (word === 'middle') {
    const point = pointOf(rest, units);
    if (!point) return `${wanted}: two figures have to follow “middle”, from left and from floor.`;
    fields.circle = { ...(fields.circle as object | undefined), x: point[0], y: point[1] };
  } else if (word === 'diameter') {
    const diameter = readExactLength(rest, units);
    if (diameter === null) return `${wanted}: a figure in ${unitInWords(units)} has to follow “diameter”.`;
    fields.circle = { ...(fields.circle as object | undefined), diameter };
  } else if (word === 'corners' || word === 'hole') {
    const vertices = verticesOf(rest, units);
    if (!vertices) return `${wanted}: corners are written “0 0, 300 0, arc 150 350 to 0 200”.`;
    if (word === 'corners') fields.shape = vertices;
    else fields.holes = [...((fields.holes as unknown[] | undefined) ?? []), vertices];
  } else return `${wanted} is nothing that an object has here.`;
  return null;
}

/** As an object of a job file has to be; the stock sheets that it names are looked for where it is put in. */
function checked(as: ObjectRef['kind'], object: Fields, sheet: ReadObject['sheet']): Entry | Fault {
  const list = ({ opening: 'openings', fitting: 'fittings', zone: 'zones', hung: 'hung' } as const)[as];
  const outline = [
    [0, 0],
    [1000, 0],
    [1000, 1000],
    [0, 1000],
  ];
  const { job, findings } = readJobObject({
    ...plainJob,
    stock: stockNamedBy(object.layout, sheet),
    photos: photosNamedBy(object.markings),
    walls: [{ id: 'A', outline, [list]: [object] }],
  });
  const read = job?.walls[0]?.[list]?.[0];
  if (read) return { as, object: read, sheet };
  return { fault: withoutPath(findings[0]?.text) };
}

/** Pictures that markings show: whether the job has them is looked at where the zone is put in. */
function photosNamedBy(markings: unknown): Fields[] {
  if (!Array.isArray(markings)) return [];
  const ids = markings.map((marking) => (marking as Fields | null)?.photo);
  const named = new Set(ids.filter((id) => typeof id === 'string' && /^[0-9a-f]{64}$/.test(id)));
  return [...named].map((id) => ({ id, type: 'image/png', width: 1000, height: 1000 }));
}

function stockNamedBy(layout: unknown, sheet: ReadObject['sheet']): Fields[] {
  if (typeof layout !== 'object' || layout === null) return [];
  const { stock, stocks, cutFrom } = layout as Fields;
  const named = [stock, stocks, cutFrom].flat().filter((id) => typeof id === 'string' && id !== '');
  const size = sheet ?? { width: 1000, height: 1000 };
  return [...new Set(named)].slice(0, 100).map((id) => ({ id, ...size }));
}
