import { createContext } from 'svelte';
import { fitView } from '../../core/geometry/homography';
import { rectifiedArea } from '../../core/geometry/rectify';
import { findPhoto } from '../../core/job/photos';
import type { Pin } from '../../core/job/schema';
import { boxOfVertices, type MmPoint } from '../../core/job/shape';
import { putInMarking } from '../job/changes/markings';
import { putPhotoUnder, putInPin } from '../job/changes/photos';
import type { OpenJob } from '../job/open-job.svelte';
import type { PhotoStore } from '../keeping/photo-store';
import { newMarking } from '../../core/job/new-marking';
import { MarkingPictures } from '../markings/pictures.svelte';
import { takePicture } from '../markings/take-picture';
import { notKept } from './job-file';
import { Rectified, type Wanted } from './rectified.svelte';
import { takePhoto, type TakenPhoto } from './take-photo';

export type PhotoDialog =
  /** Where a photo goes that was dropped or pasted. */
  | { readonly kind: 'arrived'; readonly taken: TakenPhoto; readonly at: MmPoint | null }
  | { readonly kind: 'mark' }
  | { readonly kind: 'pin'; readonly taken: TakenPhoto; readonly at: MmPoint }
  | { readonly kind: 'look'; readonly pinId: string };

export type Purpose = 'drawing' | 'pin';

/** Photos of the job on the screen: loading them, the one under the drawing, those pinned to places. */
export class PhotoDesk {
  readonly open: OpenJob;
  readonly #store: PhotoStore;
  readonly #rectified: Rectified;
  /** Those that markings of zones show. */
  readonly pictures: MarkingPictures;

  dialog = $state.raw<PhotoDialog | null>(null);
  /** A photo is being read. */
  busy = $state.raw(false);
  /** Where on the wall something was dropped; the drawing knows. */
  placeOf: ((event: DragEvent) => MmPoint | null) | null = null;

  constructor(open: OpenJob, store: PhotoStore) {
    this.open = open;
    this.#store = store;
    this.pictures = new MarkingPictures(store);
    this.#rectified = new Rectified(async (id) => (await store.get(id))?.bytes);
  }

  readonly underDrawing = $derived.by(() => this.open.wall?.photo);
  readonly points = $derived(this.underDrawing?.points);
  readonly photo = $derived.by(() =>
    this.underDrawing ? findPhoto(this.open.job, this.underDrawing.photo) : undefined,
  );
  /** null without points to fit; `fault` where they fit nothing. */
  readonly view = $derived(this.points && this.points.length > 0 ? fitView(this.points) : null);

  /** The part of the wall that is of use, in whole half metres, so that it seldom changes. */
  readonly #around = $derived.by(() => {
    const { outline } = this.open.wall ?? {};
    if (!outline) return '';
    const { x, y, width, height } = boxOfVertices(outline);
    const down = (mm: number) => Math.floor((mm - 250) / 500) * 500;
    const up = (mm: number) => Math.ceil((mm + 250) / 500) * 500;
    return JSON.stringify({ left: down(x), bottom: down(y), right: up(x + width), top: up(y + height) });
  });

  readonly wanted = $derived.by((): Wanted | null => {
    const { photo, view, points } = this;
    if (!photo || !points || !view || 'fault' in view || !this.#around) return null;
    const around = JSON.parse(this.#around) as Parameters<typeof rectifiedArea>[3];
    const area = rectifiedArea(
      view,
      photo,
      points.map(({ px }) => px),
      around,
    );
    return area && { photo: photo.id, toPhoto: view.toPhoto, area };
  });

  /** The photo of the wall on the screen, square-on, while it is shown. */
  readonly picture = $derived.by(() =>
    this.wanted && this.underDrawing?.shown ? this.#rectified.picture : null,
  );

  readonly fade = $derived(this.underDrawing?.fade ?? 0);

  /** Why the photo under the drawing cannot be seen, in a sentence, or null. */
  readonly fault = $derived.by(() => {
    const { view } = this;
    if (!this.underDrawing || !view) return null;
    if ('fault' in view) return view.fault;
    return this.wanted ? this.#rectified.fault : 'The photo shows nothing of this wall: check its points.';
  });

  /** Asks for the picture that is wanted; call whenever that changes. */
  follow(): void {
    this.#rectified.show(this.underDrawing?.shown ? this.wanted : null);
  }

  /** To be looked at as it was taken; null if it is not on this device. */
  async bitmapOf(id: string): Promise<ImageBitmap | null> {
    const kept = await this.#store.get(id).catch(() => undefined);
    return kept ? createImageBitmap(kept.bytes).catch(() => null) : null;
  }

  pick(purpose: Purpose): void {
    pickFile('image/jpeg,image/png,image/webp', (file) => void this.take(file, purpose));
  }

  /** A picture as a marking in the middle of a zone: of the chosen one, else of the first. */
  pickPicture(): void {
    pickFile('image/jpeg,image/png,image/webp,image/svg+xml,.svg', (file) => void this.takePicture(file));
  }

  async takePicture(file: File): Promise<void> {
    const { open } = this;
    const { wall, selection } = open;
    const zone = wall?.zones.find(({ id }) => id === selection?.id) ?? wall?.zones[0];
    if (!wall || !zone || this.busy) return;
    this.busy = true;
    const taken = await takePicture(file).finally(() => (this.busy = false));
    if ('fault' in taken) {
      open.refused = taken.fault;
      return;
    }
    const lost = await this.#keep(taken);
    this.pictures.forget(taken.photo.id);
    const marking = newMarking(zone, 'picture', undefined, taken.photo);
    const { name, change } = putInMarking(wall.id, zone.id, marking, taken.photo);
    if (open.apply(name, change) !== null) return;
    open.selection = { kind: 'zone', id: zone.id };
    open.marking = { zone: zone.id, marking: marking.id };
    open.showLeaf('zones', 'Markings');
    open.refused = lost ?? taken.said;
  }

  /** @param purpose null: the user is asked */
  async take(file: File | undefined, purpose: Purpose | null, at: MmPoint | null = null): Promise<void> {
    if (!file || this.busy || !this.open.wall) return;
    this.busy = true;
    const taken = await takePhoto(file).finally(() => (this.busy = false));
    if ('fault' in taken) {
      this.open.refused = taken.fault;
      return;
    }
    this.open.refused = null;
    if (purpose === null) this.dialog = { kind: 'arrived', taken, at };
    else await this.putIn(taken, purpose, at);
  }

  async putIn(taken: TakenPhoto, purpose: Purpose, at: MmPoint | null): Promise<void> {
    const { wall } = this.open;
    if (!wall) return;
    if (purpose === 'pin') {
      const box = boxOfVertices(wall.outline);
      const middle = { x: Math.round(box.x + box.width / 2), y: Math.round(box.y + box.height / 2) };
      this.dialog = { kind: 'pin', taken, at: at ?? middle };
      return;
    }
    this.dialog = null;
    const lost = await this.#keep(taken);
    const { name, change } = putPhotoUnder(wall.id, taken.photo);
    if (this.open.apply(name, change) !== null) return;
    this.dialog = { kind: 'mark' };
    if (lost) this.open.refused = lost;
  }

  /** @returns why not, in a sentence, or null */
  async pin(taken: TakenPhoto, pin: Pick<Pin, 'at' | 'date' | 'note'>): Promise<string | null> {
    const { wall, job } = this.open;
    if (!wall) return null;
    const lost = await this.#keep(taken);
    const { name, change } = putInPin(job, wall.id, { ...pin, photo: taken.photo.id }, taken.photo);
    const refused = this.open.apply(name, change);
    if (refused !== null) return refused;
    this.dialog = null;
    if (lost) this.open.refused = lost;
    return null;
  }

  /** Before the job names it, so that no kept job names a photo that is missing. */
  async #keep({ bytes }: TakenPhoto): Promise<string | null> {
    try {
      await this.#store.put(bytes);
      return null;
    } catch (reason) {
      return notKept(reason);
    }
  }
}

function pickFile(accept: string, take: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  input.onchange = () => {
    const file = input.files?.[0];
    if (file) take(file);
  };
  input.click();
}

const [photosOf, setPhotos] = createContext<PhotoDesk>();
export { photosOf, setPhotos };
