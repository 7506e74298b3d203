import type { KeptFile } from '../keeping/kept';

/*
 * Files on disk that the browser lets a page write again (File System Access). Where it does not, `canPick` is false and
 * jobs are downloaded and uploaded as ever.
 */

/** What the types of the platform do not know yet. */
interface Pickers {
  showSaveFilePicker(options: object): Promise<FileSystemFileHandle>;
  showOpenFilePicker(options: object): Promise<FileSystemFileHandle[]>;
}

interface Permitted {
  queryPermission?(wanted: { mode: 'readwrite' }): Promise<PermissionState>;
  requestPermission?(wanted: { mode: 'readwrite' }): Promise<PermissionState>;
}

const pickers = () => window as unknown as Pickers;
const types = [{ description: 'Lodeplan job', accept: { 'application/json': ['.json'] } }];

export function canPick(): boolean {
  return 'showSaveFilePicker' in window && 'showOpenFilePicker' in window;
}

/** undefined if the user chose none. @throws whatever else the browser says */
export async function pickToSave(suggestedName: string): Promise<FileSystemFileHandle | undefined> {
  return chosen(() => pickers().showSaveFilePicker({ suggestedName, types, id: 'jobs' }));
}

export async function pickToOpen(): Promise<FileSystemFileHandle | undefined> {
  const handles = await chosen(() => pickers().showOpenFilePicker({ types, id: 'jobs' }));
  return handles?.[0];
}

/** Asks again where the browser has forgotten that it was allowed. */
export async function mayWrite(handle: FileSystemFileHandle): Promise<boolean> {
  const permitted = handle as FileSystemFileHandle & Permitted;
  const wanted = { mode: 'readwrite' } as const;
  if ((await permitted.queryPermission?.(wanted)) === 'granted') return true;
  return ((await permitted.requestPermission?.(wanted)) ?? 'granted') === 'granted';
}

/** Whether it is still as it was when it was last read or written here. */
export async function isAsLeft({ handle, lastModified, size }: KeptFile): Promise<boolean> {
  const file = await handle.getFile();
  return file.lastModified === lastModified && file.size === size;
}

/** The old text stays until the new one is whole. @returns how the file was left */
export async function writeFile(handle: FileSystemFileHandle, text: string): Promise<KeptFile> {
  const stream = await handle.createWritable();
  try {
    await stream.write(text);
    await stream.close();
  } catch (reason) {
    await stream.abort().catch(() => undefined);
    throw reason;
  }
  const { lastModified, size } = await handle.getFile();
  return { handle, lastModified, size };
}

async function chosen<T>(pick: () => Promise<T>): Promise<T | undefined> {
  try {
    return await pick();
  } catch (reason) {
    if (reason instanceof DOMException && reason.name === 'AbortError') return undefined;
    throw reason;
  }
}
