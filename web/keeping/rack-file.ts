import * as v from 'valibot';
import { nextMark, type FirmPiece } from './firm-piece';

/*
 * The firm's rack as a file: `{ "format": "lodeplan-rack", "version": 1, "pieces": […] }`, so that it can be carried to
 * another device and kept safe.
 */

const text = v.pipe(v.string(), v.maxLength(2000));
const identifier = v.pipe(v.string(), v.minLength(1), v.maxLength(40));
const size = v.pipe(v.number(), v.finite(), v.minValue(0.01), v.maxValue(20_000));
const booking = v.object({ jobKey: text, job: text, revision: text, date: text });

const rackFile = v.object({
  format: v.literal('lodeplan-rack'),
  version: v.literal(1),
  pieces: v.pipe(
    v.array(
      v.object({
        key: identifier,
        id: identifier,
        width: size,
        height: size,
        thickness: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0.01), v.maxValue(100))),
        coating: v.optional(text),
        hasFace: v.boolean(),
        stockName: text,
        value: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
        currency: v.optional(v.pipe(v.string(), v.regex(/^[A-Z]{3}$/))),
        from: v.optional(booking),
        usedUp: v.optional(booking),
      }),
    ),
    v.maxLength(50_000),
  ),
});

export function writeRack(pieces: readonly FirmPiece[]): string {
  return `${JSON.stringify({ format: 'lodeplan-rack', version: 1, pieces }, null, 2)}\n`;
}

/** @returns `fault`: the first thing that is wrong with the file, in a sentence */
export function readRack(file: string): { pieces: FirmPiece[] } | { fault: string } {
  let value: unknown;
  try {
    value = JSON.parse(file);
  } catch {
    return { fault: 'This file is no JSON; choose a file that “Save the rack as a file” has written.' };
  }
  const format = v.safeParse(v.object({ format: v.literal('lodeplan-rack') }), value);
  if (!format.success) {
    return { fault: 'This is no rack file: it has no "format": "lodeplan-rack". The rack stays as it is.' };
  }
  const parsed = v.safeParse(rackFile, value, { abortEarly: true });
  if (parsed.success) return { pieces: parsed.output.pieces as FirmPiece[] };
  const [issue] = parsed.issues;
  const where = v.getDotPath(issue) ?? 'the file';
  return { fault: `In this rack file ${where} cannot be read: ${issue.message}. The rack stays as it is.` };
}

/**
 * What a file brings onto a rack. A piece that is here already stays as it is here, except that one used up there is used
 * up here too; a piece whose mark is taken here gets a new one.
 *
 * @returns the pieces to put, and which were marked anew
 */
export function bringIn(
  here: readonly FirmPiece[],
  brought: readonly FirmPiece[],
): { put: FirmPiece[]; marked: { before: string; now: string }[] } {
  const known = new Map(here.map((piece) => [piece.key, piece]));
  const marks = new Set(here.map(({ id }) => id));
  const put: FirmPiece[] = [];
  const marked: { before: string; now: string }[] = [];
  for (const piece of brought) {
    const same = known.get(piece.key);
    if (same) {
      if (piece.usedUp && !same.usedUp) put.push({ ...same, usedUp: piece.usedUp });
      continue;
    }
    const id = marks.has(piece.id) ? nextMark([...marks, ...brought.map((other) => other.id)]) : piece.id;
    if (id !== piece.id) marked.push({ before: piece.id, now: id });
    marks.add(id);
    put.push({ ...piece, id });
    known.set(piece.key, piece);
  }
  return { put, marked };
}
