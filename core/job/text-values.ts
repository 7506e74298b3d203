import type { LengthUnits } from '../lengths';
import { lengthSource, readExactLength } from './exact-lengths';
import type { Vertex } from './schema';

/* Values in the text of objects, as `writeObjects` writes them; null for what is none. */

export type Fault = { readonly fault: string };
export type Fields = Record<string, unknown>;

/** Fields as JSON, put into `fields`. */
export function readAlso(json: string, fields: Fields): Fault | null {
  try {
    const value = JSON.parse(json) as unknown;
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      throw new SyntaxError('no object');
    // Not by assignment: a field called __proto__ is to be found and refused, not to take effect.
    for (const [field, entry] of Object.entries(value)) {
      Object.defineProperty(fields, field, {
        value: entry,
        enumerable: true,
        configurable: true,
        writable: true,
      });
    }
    return null;
  } catch {
    return { fault: 'what follows “also” is no JSON that can be read; it may have been cut or broken.' };
  }
}

export function verticesOf(text: string, units: LengthUnits): Vertex[] | null {
  const vertices = text.split(',').map((corner): Vertex | null => {
    const arc = /^\s*arc\s+(.+?)\s+to\s+(.+)$/.exec(corner);
    if (!arc) return pointOf(corner, units);
    const [via, arcTo] = [pointOf(arc[1]!, units), pointOf(arc[2]!, units)];
    return via && arcTo && { arcTo, via };
  });
  return vertices.every((vertex) => vertex !== null) ? vertices : null;
}

const pointPattern = new RegExp(`^\\s*(${lengthSource})\\s+(${lengthSource})\\s*$`);

export function pointOf(text: string, units: LengthUnits): [number, number] | null {
  const [x, y] = (pointPattern.exec(text) ?? []).slice(1).map((figure) => readExactLength(figure, units));
  return x === null || y === null || x === undefined || y === undefined ? null : [x, y];
}

export function textOf(word: string): string | null {
  if (!word.startsWith('"')) return word;
  try {
    return JSON.parse(word) as string;
  } catch {
    return null;
  }
}

export const plainJob = { format: 'lodeplan-job', version: 1, name: 'Pasted' };

/** What a finding says, without the way to the one value that was looked at. */
export function withoutPath(text = 'it cannot be read.'): string {
  return text.replace(/^(?:walls\[0\]\.)?\w+\[0\]\.?(\S*) (?:\([^)]*\))?/, '$1').trim();
}
