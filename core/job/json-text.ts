import type { Finding } from '../finding';
import { findJsonFault } from './json-fault';
import { longestFile } from './limits';

/** JSON text to a value, or a sentence that says where the text breaks. */
export function parseJson(text: string): { value: unknown } | { finding: Finding } {
  if (text.length > longestFile) {
    return refuse(
      'file-too-long',
      `The file has ${text.length} characters; the limit is ${longestFile}, so take old revisions out of it.`,
    );
  }
  // A byte order mark is no JSON, yet some editors write one.
  const json = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (json.trim() === '') return refuse('not-json', 'The file is empty; choose a job file.');
  try {
    return { value: JSON.parse(json) as unknown };
  } catch {
    return refuse('not-json', `The file is not valid JSON${whereItBreaks(json)}.`);
  }
}

function whereItBreaks(json: string): string {
  const fault = findJsonFault(json);
  if (!fault) return '';
  const lines = json.slice(0, fault.offset).split('\n');
  const place = ` at line ${lines.length}, column ${lines.at(-1)!.length + 1}`;
  const found =
    fault.offset >= json.length
      ? 'where the file ends too early'
      : `instead of ${JSON.stringify(Array.from(json.slice(fault.offset, fault.offset + 2))[0])}`;
  return `${place}; put ${fault.wanted} there ${found}`;
}

function refuse(code: string, text: string): { finding: Finding } {
  return { finding: { level: 'error', code, text } };
}
