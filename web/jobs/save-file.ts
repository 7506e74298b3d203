import type { Job } from '../../core/job/schema';
import { download, fileName } from '../documents/download';
import type { Keeping } from '../keeping/keeping.svelte';
import { writeJobFile } from '../photo/job-file';
import { canPick, isAsLeft, mayWrite, pickToSave, writeFile } from './disk-file';

/** `asks`: the file that something else has changed since, and only the user knows whether it may be written over. */
export type Saved =
  | { readonly kind: 'saved'; readonly said: string }
  | { readonly kind: 'warned'; readonly said: string }
  | { readonly kind: 'asks'; readonly file: string }
  | { readonly kind: 'nothing' };

/** same: to its own file, if it has one. over: the same although something else has changed it. another: a new one. */
export type SaveWay = 'same' | 'over' | 'another';

/** Saves a job to its file on disk; downloads it where the browser writes no files, or was not allowed to. */
export async function saveJob(job: Job, keeping: Keeping, way: SaveWay): Promise<Saved> {
  const suggested = `${fileName(job.name)}.json`;
  if (!canPick()) return downloaded(job, keeping, suggested, null);
  try {
    const kept = way === 'another' ? undefined : await keeping.files.of(keeping.id);
    if (kept && !(await mayWrite(kept.handle))) {
      const why = `This page was not allowed to write to “${kept.handle.name}”, so the job was downloaded instead.`;
      return await downloaded(job, keeping, suggested, why);
    }
    if (kept && way === 'same' && !(await isAsLeft(kept))) return { kind: 'asks', file: kept.handle.name };
    const handle = kept?.handle ?? (await pickToSave(suggested));
    if (!handle) return { kind: 'nothing' };
    const { text, said } = await writeJobFile(job, keeping.photos);
    await keeping.files.remember(keeping.id, await writeFile(handle, text));
    return said ? { kind: 'warned', said } : { kind: 'saved', said: `Saved to “${handle.name}”.` };
  } catch (reason) {
    // The file is gone, or its disk is full or away: a download is still a file in hand.
    const why = reason instanceof Error && reason.message ? ` (${reason.message.replace(/\.$/, '')})` : '';
    return downloaded(
      job,
      keeping,
      suggested,
      `The file could not be written${why}, so the job was downloaded instead; “Save as another file” chooses a new place.`,
    );
  }
}

async function downloaded(job: Job, keeping: Keeping, name: string, why: string | null): Promise<Saved> {
  const { text, said } = await writeJobFile(job, keeping.photos);
  download(new Blob([text], { type: 'application/json' }), name);
  const words = [why, said].filter(Boolean).join(' ');
  return words ? { kind: 'warned', said: words } : { kind: 'nothing' };
}
