import type { Finding } from '../finding';
import type { FixingPoint } from './ground-schema';
import { fixingPointNames } from './names';

/** The way to a value in the file: names of fields and positions in lists. */
export type Path = readonly (string | number)[];

/** A place in the file, said in both languages: the program's and the user's. */
export interface Place {
  /** `walls[0].openings[2].width` */
  readonly path: string;
  /** `door D1 of wall A`; empty where no id says more than the path. */
  readonly words: string;
  readonly wall?: string;
  readonly object?: string;
}

/** @param file the value that was read, however wrong: ids are used where they are what they should be */
export function placeOf(file: unknown, path: Path): Place {
  const words: string[] = [];
  let wall: string | undefined;
  let object: string | undefined;
  let value = file;
  path.forEach((key, i) => {
    value = fieldOf(value, key);
    if (typeof key !== 'number') return;
    const id = fieldOf(value, path[i - 1] === 'fittingKinds' || path[i - 1] === 'hungKinds' ? 'name' : 'id');
    if (typeof id !== 'string' || id === '') return;
    // Zones of an alternative are listed by the id of their wall.
    const byWall = path[0] === 'alternatives' && i === 4;
    const list = byWall ? path[2] : path[i - 1];
    const name = nameInWords(list, value, id);
    if (!name) return;
    words.unshift(byWall ? `${name} on wall ${shortId(String(path[3]))}` : name);
    if (list === 'walls') wall = id;
    else if (i === 3) object = id;
  });
  return {
    path: pathText(path),
    words: words.join(' of '),
    ...(wall !== undefined && { wall }),
    ...(object !== undefined && { object }),
  };
}

/** A refusal: `walls[0].openings[2].width (door D1 of wall A) is -5; give …`. */
export function refusal(file: unknown, path: Path, code: string, says: string): Finding {
  const { path: where, words, wall, object } = placeOf(file, path);
  const subject = where === '' ? 'The file' : words === '' ? where : `${where} (${words})`;
  return {
    level: 'error',
    code,
    ...(wall !== undefined && { wall }),
    ...(object !== undefined && { object }),
    text: `${subject} ${says}`,
  };
}

/** Field names that are no plain word are quoted, so that the path can be read back. */
export function pathText(path: Path): string {
  return path
    .map((key, i) => {
      if (typeof key === 'number') return `[${key}]`;
      if (!/^[A-Za-z_$][\w$-]{0,60}$/.test(key)) return `[${shortText(key)}]`;
      return i === 0 ? key : `.${key}`;
    })
    .join('');
}

/** A wrong value as it is shown in a message: short, on one line, quoted if it is text. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return shortText(value);
  if (Array.isArray(value)) {
    const plain = value.length <= 4 && value.every((entry) => typeof entry !== 'object' || entry === null);
    return plain ? `[${value.map(shown).join(', ')}]` : `a list of ${value.length}`;
  }
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

function shortText(text: string): string {
  return JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
}

function fieldOf(value: unknown, key: string | number): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return (value as Record<string | number, unknown>)[key];
}

function nameInWords(list: string | number | undefined, value: unknown, id: string): string | null {
  const short = shortId(id);
  switch (list) {
    case 'walls':
      return `wall ${short}`;
    case 'zones':
      return `zone ${short}`;
    case 'openings':
    case 'fittings': {
      const kind = fieldOf(value, 'kind');
      const noun = list === 'openings' ? 'opening' : 'fitting';
      return `${typeof kind === 'string' && /^[a-z-]{1,20}$/.test(kind) && kind !== 'free' ? kind : noun} ${short}`;
    }
    case 'fixingPoints': {
      const kind = fieldOf(value, 'kind');
      return `${fixingPointNames[kind as FixingPoint['kind']] ?? 'fixing point'} ${short}`;
    }
    case 'lines':
      return `joint ${short}`;
    case 'stock':
      return `stock sheet ${short}`;
    case 'rack':
      return `rack piece ${short}`;
    case 'fittingKinds':
      return `kind of fitting ${shown(id)}`;
    case 'hung':
      return `hung item ${short}`;
    case 'magnets':
      return `magnet ${short}`;
    case 'pullTests':
      return `pull test ${short}`;
    case 'peopleBelow':
      return `stretch ${short}`;
    case 'hungKinds':
      return `kind of hung item ${shown(id)}`;
    case 'products':
      return `product ${short}`;
    case 'buildUps':
      return `build-up ${short}`;
    case 'revisions':
      return `revision ${short}`;
    case 'markings':
      return `marking ${short}`;
    case 'pins':
      return `pinned photo ${short}`;
    case 'alternatives':
      return `alternative ${short}`;
    default:
      return null;
  }
}

function shortId(id: string): string {
  return id.length > 40 ? `${id.slice(0, 40)}…` : id;
}
