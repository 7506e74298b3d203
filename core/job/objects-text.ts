import { unitInWords, type LengthUnits } from '../lengths';
import { exactLengths, type WriteExactly } from './exact-lengths';
import { ownKindsOf } from './fitting-kinds';
import { isSameName } from './kind-names';
import { isLocked } from './several';
import {
  fittingKinds,
  openingKinds,
  type Fitting,
  type Job,
  type Opening,
  type OwnKind,
  type Vertex,
  type Wall,
  type Zone,
} from './schema';
import { findObject, type ObjectRef, type WallObject } from './shape';

/*
 * Objects of a wall as text that a person can read and send in a letter: a heading, then one entry an object.
 *
 *     Lodeplan objects: 2 from wall A, Proofing wall. In mm, from the left and from the floor.
 *     - socket K1 "Left of the door": left 1500; floor 300; width 146; height 86; clearance 5
 *     - fitting F1: corners 0 0, 300 0, 300 200, arc 150 350 to 0 200; clearance 10
 *
 * A kind of fitting that the job has made itself stands after the objects, so that it comes along:
 *
 *     - kind "Pin rail": width 900; height 60; floor 1500; clearance 10; depth 25
 *
 * Lengths are in the job's units; one that these would round stands in mm and says so. What has no words here stands at
 * the end as JSON, as in the job file, after "also", so that nothing is lost.
 */

export const textHeading = 'Lodeplan objects';

/** Entries are broken at spaces of their own, so that a letter need not break them anywhere else. */
const longestLine = 76;

export function writeObjects(job: Job, wall: Wall, refs: readonly ObjectRef[]): string {
  const entries = refs.flatMap((ref) => {
    const object = findObject(wall, ref);
    return object ? [wrapped(partsOf(job, ref.kind, object, exactLengths(job.units)))] : [];
  });
  const kinds = ownKindsOf(job).filter(({ name }) => refs.some((ref) => isOfKind(wall, ref, name)));
  const kindEntries = kinds.map((kind) => wrapped(kindParts(kind, exactLengths(job.units))));
  const units = job.units ?? 'mm';
  const from = wall.name ? `${wall.id}, ${oneLine(wall.name)}` : wall.id;
  const heading = `${textHeading}: ${entries.length} from wall ${from}. ${unitWords(units)}`;
  return `${[heading, ...entries, ...kindEntries].join('\n')}\n`;
}

function unitWords(units: LengthUnits): string {
  const places = `In ${unitInWords(units)}, from the left and from the floor`;
  return units === 'mm' ? `${places}.` : `${places}; after “also” in mm.`;
}

/** The word that an entry begins with; what is of no known kind has it at the end. */
export function headWord(as: ObjectRef['kind'], kind: string): string {
  if (as === 'zone' || as === 'hung') return as;
  const known: readonly string[] = as === 'opening' ? openingKinds : fittingKinds;
  return kind !== 'free' && known.includes(kind) ? kind : as;
}

function isOfKind(wall: Wall, ref: ObjectRef, name: string): boolean {
  const object = ref.kind === 'fitting' ? (findObject(wall, ref) as Fitting | undefined) : undefined;
  return object !== undefined && isSameName(object.kind, name);
}

function kindParts({ name, ...figures }: OwnKind, write: WriteExactly): string[] {
  const { round, width, height, floor, clearance, depth, electric, ...others } = figures;
  const left = { ...others, ...(round === false && { round }), ...(electric === false && { electric }) };
  const clauses = [
    round ? 'round' : '',
    ...Object.entries({ width, height, floor, clearance, depth }).map(([word, figure]) =>
      figure === undefined ? '' : `${word} ${write(figure)}`,
    ),
    electric ? 'electric' : '',
    Object.keys(left).length > 0 ? `also ${JSON.stringify(left)}` : '',
  ].filter(Boolean);
  return [
    `- kind ${JSON.stringify(name)}:`,
    ...clauses.map((clause, i) => (i < clauses.length - 1 ? `${clause};` : clause)),
  ];
}

/** A kind that no word here says, but for marks that would part it. */
function namesKind(kind: string): boolean {
  return kind !== 'free' && /^[^\s";\\][^";\\\r\n]*$/.test(kind);
}

/** Parts between which a line may be broken. */
function partsOf(job: Job, as: ObjectRef['kind'], object: WallObject, write: WriteExactly): string[] {
  const { id, ...rest } = object as Record<string, unknown> & { id: string };
  const said = new Set<string>(['id']);
  const say = (fields: readonly string[], words: string) => {
    fields.forEach((field) => said.add(field));
    return words;
  };
  const kind = as === 'zone' ? '' : (rest.kind as string);
  const word = headWord(as, kind);
  if (word === kind || (kind === 'free' && as !== 'hung')) said.add('kind');
  const name = rest.name as string | undefined;
  if (name === '' ? as === 'zone' : name !== undefined) said.add('name');
  const title = name && said.has('name') ? ` ${JSON.stringify(name)}` : '';
  const parts: string[] = [`- ${word} ${/^[\p{L}\p{N}_-]+$/u.test(id) ? id : JSON.stringify(id)}${title}:`];
  const clauses = [
    ...(as !== 'zone' && word !== kind && namesKind(kind)
      ? [[say(['kind'], `kind ${JSON.stringify(kind)}`)]]
      : []),
    ...placeClauses(object, say, write),
    ...holeClauses(object as Zone, as, say, write),
    ...plainClauses(rest, say, write),
    ...steelClause(job, (object as Zone).layout, write),
  ];
  const left = Object.fromEntries(
    Object.entries(rest).filter(([field, value]) => !said.has(field) && value !== undefined),
  );
  if (Object.keys(left).length > 0) clauses.push([`also ${JSON.stringify(left)}`]);
  clauses.forEach((clause, i) => {
    const last = clause.length - 1;
    parts.push(...clause.map((part, k) => (k === last && i < clauses.length - 1 ? `${part};` : part)));
  });
  return parts;
}

type Say = (fields: readonly string[], words: string) => string;

function placeClauses(object: WallObject, say: Say, write: WriteExactly): string[][] {
  const { x, y, width, height, circle } = object as Opening;
  const shape = object.shape as readonly Vertex[] | undefined;
  if (circle) {
    return hasOnly(circle, ['x', 'y', 'diameter'])
      ? [
          [say(['circle'], `middle ${write(circle.x)} ${write(circle.y)}`)],
          [`diameter ${write(circle.diameter)}`],
        ]
      : [];
  }
  if (shape) return shape.every(isPlain) ? [cornersOf(say(['shape'], 'corners'), shape, write)] : [];
  if ([x, y, width, height].some((figure) => typeof figure !== 'number')) return [];
  say(['x', 'y', 'width', 'height'], '');
  return [
    [`left ${write(x!)}`],
    [`floor ${write(y!)}`],
    [`width ${write(width!)}`],
    [`height ${write(height!)}`],
  ];
}

function holeClauses(zone: Zone, as: ObjectRef['kind'], say: Say, write: WriteExactly): string[][] {
  if (as !== 'zone' || !zone.holes?.every((hole) => hole.every(isPlain))) return [];
  say(['holes'], '');
  return zone.holes.map((hole) => cornersOf('hole', hole, write));
}

/** "corners 0 0, 300 0, arc 150 350 to 0 200" */
function cornersOf(word: string, vertices: readonly Vertex[], write: WriteExactly): string[] {
  const point = ([x, y]: readonly [number, number]) => `${write(x)} ${write(y)}`;
  return vertices.map((vertex, i) => {
    const corner = Array.isArray(vertex)
      ? point(vertex)
      : `arc ${point(vertex.via)} to ${point(vertex.arcTo)}`;
    return `${i === 0 ? `${word} ` : ''}${corner}${i < vertices.length - 1 ? ',' : ''}`;
  });
}

function plainClauses(rest: Record<string, unknown>, say: Say, write: WriteExactly): string[][] {
  const { clearance, hinge, swing, handle, buildUp } = rest;
  return [
    typeof clearance === 'number' ? say(['clearance'], `clearance ${write(clearance)}`) : '',
    hinge === 'left' || hinge === 'right' ? say(['hinge'], `hinges ${hinge}`) : '',
    swing === 'towards' || swing === 'away' ? say(['swing'], `opens ${swing}`) : '',
    typeof handle === 'number' ? say(['handle'], `handle ${write(handle)}`) : '',
    typeof buildUp === 'string' && /^[a-z][a-z-]*$/.test(buildUp)
      ? say(['buildUp'], `build-up ${buildUp}`)
      : '',
    isLocked(rest as unknown as WallObject) ? say(['locked'], 'locked') : '',
  ].flatMap((words) => (words ? [[words]] : []));
}

/** What is laid, so that another job can look for the same stock sheet; the layout itself stands after "also". */
function steelClause(job: Job, layout: Zone['layout'], write: WriteExactly): string[][] {
  const sheet = layout && job.stock.find(({ id }) => id === layout.stock);
  return sheet ? [[`sheets ${write(sheet.width)} × ${write(sheet.height)}`]] : [];
}

function isPlain(vertex: Vertex): boolean {
  return Array.isArray(vertex) || hasOnly(vertex, ['arcTo', 'via']);
}

function hasOnly(object: object, fields: readonly string[]): boolean {
  return Object.keys(object).length === fields.length && fields.every((field) => field in object);
}

function wrapped(parts: readonly string[]): string {
  const lines: string[] = [];
  let line = '';
  for (const part of parts) {
    if (line !== '' && line.length + 1 + part.length > longestLine) {
      lines.push(line);
      line = `  ${part}`;
    } else line = line === '' ? part : `${line} ${part}`;
  }
  return [...lines, line].join('\n');
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ');
}
