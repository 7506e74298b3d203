import type { Job, Wall } from '../../core/job/schema';
import type { DoneChange } from '../job/open-job.svelte';

/** What a job has on one side of a change and not, or otherwise, on the other. */
interface Side {
  readonly fields: Readonly<Record<string, unknown>>;
  /** Fields that are missing on this side. */
  readonly without?: readonly string[];
  readonly walls?: readonly Wall[];
  /** Ids of all walls, where these are other ones or stand in another order. */
  readonly order?: readonly string[];
}

interface Written {
  readonly name: string;
  readonly before: Side;
  readonly after: Side;
}

/** A change as JSON: its name and, of the job before and after, only the walls and fields that differ. */
export function changeAsText({ name, before, after }: DoneChange): string {
  return JSON.stringify({
    name,
    before: sideOf(before, after),
    after: sideOf(after, before),
  } satisfies Written);
}

/**
 * Changes as they were, from the job that they led to. What a change did not touch is the very same object before and
 * after it.
 *
 * @param texts oldest first; the first `done` of them led to `job`, the others were undone
 * @returns as many as can be read, counted from the job both ways; `undone` has the next to be made again last
 */
export function changesFromTexts(
  job: Job,
  texts: readonly string[],
  done: number,
): { done: DoneChange[]; undone: DoneChange[] } {
  const written = texts.map(read);
  const back: DoneChange[] = [];
  let at = job;
  for (let n = done - 1; n >= 0; n--) {
    const before = written[n] && goTo(at, written[n]!.before);
    if (!before) break;
    back.unshift({ name: written[n]!.name, before, after: at });
    at = before;
  }
  const forth: DoneChange[] = [];
  at = job;
  for (const one of written.slice(done)) {
    const after = one && goTo(at, one.after);
    if (!after) break;
    forth.unshift({ name: one.name, before: at, after });
    at = after;
  }
  return { done: back, undone: forth };
}

function sideOf(job: Job, other: Job): Side {
  const [fields, others] = [job, other] as unknown as Record<string, unknown>[];
  const names = [...new Set([...Object.keys(fields!), ...Object.keys(others!)])].filter(
    (name) => name !== 'walls' && fields![name] !== others![name],
  );
  const has = names.filter((name) => fields![name] !== undefined);
  const without = names.filter((name) => fields![name] === undefined);
  const same = new Set(other.walls);
  const walls = job.walls.filter((wall) => !same.has(wall));
  const ids = job.walls.map(({ id }) => id);
  const isMoved = ids.join('\n') !== other.walls.map(({ id }) => id).join('\n');
  return {
    fields: Object.fromEntries(has.map((name) => [name, fields![name]])),
    ...(without.length > 0 && { without }),
    ...(walls.length > 0 && { walls }),
    ...(isMoved && { order: ids }),
  };
}

/** null if the side names a wall that is not there: then it belongs to another job. */
function goTo(job: Job, { fields, without = [], walls = [], order }: Side): Job | null {
  const known = new Map([...job.walls, ...walls].map((wall) => [wall.id, wall]));
  const found = (order ?? job.walls.map(({ id }) => id)).map((id) => known.get(id));
  if (found.includes(undefined)) return null;
  const to = { ...job, ...fields, walls: found } as Job;
  for (const name of without) delete (to as unknown as Record<string, unknown>)[name];
  return to;
}

function read(text: string): Written | null {
  try {
    const value = JSON.parse(text) as Written;
    return typeof value.name === 'string' && value.before?.fields && value.after?.fields ? value : null;
  } catch {
    return null;
  }
}
