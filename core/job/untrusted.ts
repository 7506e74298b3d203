import type { Finding } from '../finding';
import { deepestNesting, mostValues } from './limits';
import { refusal, shown } from './place';

/**
 * What must hold of any value before it is even compared with the schema: bounded nesting and number of values,
 * nothing that JSON cannot hold, no field that would pass for an object's prototype. Walks without recursion,
 * so that no nesting can exhaust the stack. Frozen revisions are held to the nesting only.
 *
 * @returns the number of values outside the revisions, or the first fault
 */
export function boundsOfFile(file: unknown): { values: number } | { finding: Finding } {
  const open: Container[] = [];
  const fault = (code: string, says: string) => ({ finding: refusal(file, pathOf(open), code, says) });
  let values = 0;
  let value = file;
  for (;;) {
    const frozen = open[0]?.key === 'revisions';
    if (!frozen && ++values > mostValues) {
      const says = `holds more than ${mostValues} values, which is the limit; split the job.`;
      return { finding: refusal(file, [], 'too-many', says) };
    }
    if (!isJsonValue(value)) {
      return fault('wrong-value', `is ${shown(value)}, which a job file cannot hold; give JSON.`);
    }
    if (typeof value === 'object' && value !== null) {
      if (open.length >= deepestNesting) {
        return fault('nested-too-deep', `is nested more than ${deepestNesting} deep; flatten it.`);
      }
      open.push({
        value: value as Container['value'],
        keys: Array.isArray(value) ? null : Object.keys(value),
        next: 0,
        key: '',
      });
    }
    const next = nextOf(open);
    if (next === undefined) return { values };
    if (next === '__proto__') return fault('wrong-value', 'is a name no field may have; rename it.');
    value = open.at(-1)!.value[next];
  }
}

/** A list or object on the way to the value at hand, and how far it has been walked. */
interface Container {
  readonly value: Readonly<Record<string | number, unknown>>;
  /** null for a list. */
  readonly keys: readonly string[] | null;
  next: number;
  key: string | number;
}

/** Steps to the next value; containers that are done are closed. undefined when all are. */
function nextOf(open: Container[]): string | number | undefined {
  for (let last = open.at(-1); last; last = open.at(-1)) {
    const length = last.keys ? last.keys.length : (last.value.length as number);
    if (last.next < length) {
      last.key = last.keys ? last.keys[last.next]! : last.next;
      last.next++;
      return last.key;
    }
    open.pop();
  }
  return undefined;
}

/** Only the first steps of a path that is absurdly deep are told. */
function pathOf(open: readonly Container[]): (string | number)[] {
  return open.slice(0, 12).map(({ key }) => key);
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
