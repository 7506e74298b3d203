import type { Finding } from '../finding';
import { deepestNesting, mostValues } from './limits';
import { refusal, shown, type Path } from './place';

/**
 * What must hold of any value before it is even compared with the schema: bounded nesting and number of values,
 * nothing that JSON cannot hold, no field that would pass for an object's prototype. Walks without recursion,
 * so that no nesting can exhaust the stack. Frozen revisions are held to the nesting only.
 *
 * @returns the number of values outside the revisions, or the first fault
 */
export function boundsOfFile(file: unknown): { values: number } | { finding: Finding } {
  const open: { value: unknown; path: Link | null; depth: number; frozen: boolean }[] = [
    { value: file, path: null, depth: 0, frozen: false },
  ];
  let values = 0;
  for (let entry = open.pop(); entry; entry = open.pop()) {
    const { value, path, depth, frozen } = entry;
    if (!frozen && ++values > mostValues) {
      return fault(
        file,
        null,
        'too-many',
        `holds more than ${mostValues} values, which is the limit; split the job.`,
      );
    }
    if (!isJsonValue(value)) {
      return fault(file, path, 'wrong-value', `is ${shown(value)}, which a job file cannot hold; give JSON.`);
    }
    if (typeof value !== 'object' || value === null) continue;
    if (depth >= deepestNesting) {
      return fault(file, path, 'nested-too-deep', `is nested more than ${deepestNesting} deep; flatten it.`);
    }
    if (Object.hasOwn(value, '__proto__')) {
      const link = { key: '__proto__', up: path };
      return fault(file, link, 'wrong-value', 'is a name no field may have; rename it.');
    }
    const list = Array.isArray(value);
    for (const [key, child] of Object.entries(value)) {
      const link = { key: list ? Number(key) : key, up: path };
      open.push({
        value: child,
        path: link,
        depth: depth + 1,
        frozen: frozen || (depth === 0 && key === 'revisions'),
      });
    }
  }
  return { values };
}

interface Link {
  readonly key: string | number;
  readonly up: Link | null;
}

function isJsonValue(value: unknown): boolean {
  switch (typeof value) {
    case 'string':
    case 'number':
    case 'boolean':
    case 'undefined':
      return true;
    case 'object':
      return value === null || Array.isArray(value) || isPlain(value);
    default:
      return false;
  }
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  // An object of another window has another Object.prototype; its own prototype is null all the same.
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}

/** Only the last steps of a path that is absurdly deep are told. */
function fault(file: unknown, link: Link | null, code: string, says: string): { finding: Finding } {
  const path: (string | number)[] = [];
  for (let step = link; step && path.length < deepestNesting; step = step.up) path.unshift(step.key);
  const told: Path = path.length > 12 ? path.slice(0, 12) : path;
  return { finding: refusal(file, told, code, says) };
}
