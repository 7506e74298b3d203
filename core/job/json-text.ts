import type { Finding } from '../finding';
import { longestFile } from './limits';

/** JSON text to a value, or a sentence that says where the text breaks. */
export function parseJson(text: string): { value: unknown } | { finding: Finding } {
  if (text.length > longestFile) {
    return refuse(
      'file-too-long',
      `The file has ${text.length} characters; the limit is ${longestFile}. Take old revisions out of it.`,
    );
  }
  // A byte order mark is no JSON, yet some editors write one.
  const json = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (json.trim() === '') return refuse('not-json', 'The file is empty; choose a job file.');
  try {
    return { value: JSON.parse(json) as unknown };
  } catch (error) {
    return refuse('not-json', `The file is not valid JSON${whereItBreaks(json, error)}.`);
  }
}

/** Runtimes word this differently; line and column are told where the message gives them or an offset. */
function whereItBreaks(json: string, error: unknown): string {
  const message = error instanceof Error ? error.message : '';
  const lineColumn = /line (\d+) column (\d+)/.exec(message);
  if (lineColumn) return at(Number(lineColumn[1]), Number(lineColumn[2]), json);
  const offset = /position (\d+)/.exec(message);
  if (offset) {
    const before = json.slice(0, Number(offset[1])).split('\n');
    return at(before.length, before.at(-1)!.length + 1, json);
  }
  if (/end of (JSON )?(input|data)/i.test(message)) {
    return ': it ends too early; a closing bracket, brace or quote is missing at its end';
  }
  return '; look for a missing comma, quote or bracket';
}

function at(line: number, column: number, json: string): string {
  const text = json.split('\n', line)[line - 1] ?? '';
  const near = text.slice(Math.max(0, column - 12), column + 12).trim();
  const mend = near === '' ? 'look just before it' : `look near ${JSON.stringify(near)}`;
  return ` at line ${line}, column ${column}; ${mend}`;
}

function refuse(code: string, text: string): { finding: Finding } {
  return { finding: { level: 'error', code, text } };
}
