import { fitView, type Point2 } from '../../core/geometry/homography';
import { mostPoints } from '../../core/geometry/homography-faults';
import type { Photo, PhotoPoint } from '../../core/job/schema';
import type { MmBox } from '../../core/job/shape';
import { boxOfCorners, cornerNames, cornersOf } from './known-sizes';

/** A point that is being marked: null where it has no place in the photo yet. */
export interface Mark {
  readonly px: Point2 | null;
  readonly at: Point2;
}

/** Points of a photo while they are marked: the four corners of something known first, then as many as wanted. */
export class Marking {
  readonly photo: Photo;
  marks = $state.raw<readonly Mark[]>([]);
  chosen = $state.raw(0);

  constructor(photo: Photo, points: readonly PhotoPoint[], box: MmBox) {
    this.photo = photo;
    this.marks = points.length >= 4 ? points : cornersOf(box).map((at) => ({ px: null, at }));
  }

  readonly points = $derived(
    this.marks.flatMap(({ px, at }): PhotoPoint[] => (px ? [{ px: [...px], at: [...at] }] : [])),
  );
  readonly isWhole = $derived(this.points.length === this.marks.length);
  readonly fit = $derived(this.points.length >= 4 ? fitView(this.points) : null);
  /** The rectangle whose corners are marked first; null if these were given places of their own. */
  readonly box = $derived(boxOfCorners(this.marks.map(({ at }) => at)));
  /** What the hand is asked for next; null once all points are marked. */
  readonly next = $derived.by(() => {
    const mark = this.marks[this.chosen];
    return mark && !mark.px ? this.nameOf(this.chosen) : null;
  });

  nameOf(index: number): string {
    return index < 4 && this.box ? `the ${cornerNames[index]} corner` : `point ${index + 1}`;
  }

  choose(index: number): void {
    this.chosen = Math.max(0, Math.min(this.marks.length - 1, index));
  }

  /** Puts the chosen point there, if it has no place yet, and goes on to the next one without. */
  place(px: Point2): void {
    if (this.marks[this.chosen]?.px !== null) return;
    this.move(this.chosen, px);
    const next = this.marks.findIndex((mark) => mark.px === null);
    if (next >= 0) this.chosen = next;
  }

  /** Tenths of a pixel are as fine as anyone can see. */
  move(index: number, [x, y]: Point2): void {
    const { width, height } = this.photo;
    const within = (value: number, most: number) => Math.round(Math.max(0, Math.min(most, value)) * 10) / 10;
    this.#set(index, { px: [within(x, width), within(y, height)] });
  }

  nudge(dx: number, dy: number): boolean {
    const px = this.marks[this.chosen]?.px;
    if (!px) return false;
    this.move(this.chosen, [px[0] + dx, px[1] + dy]);
    return true;
  }

  setAt(index: number, axis: 0 | 1, value: number): void {
    const [x, y] = this.marks[index]!.at;
    this.#set(index, { at: axis === 0 ? [value, y] : [x, value] });
  }

  setBox(box: MmBox): void {
    const corners = cornersOf(box);
    this.marks = this.marks.map((mark, i) => (corners[i] ? { ...mark, at: corners[i] } : mark));
  }

  add(): void {
    if (this.marks.length >= mostPoints) return;
    const { x, y, width, height } = this.box ?? { x: 0, y: 0, width: 1000, height: 1000 };
    this.marks = [...this.marks, { px: null, at: [x + width / 2, y + height / 2] }];
    this.chosen = this.marks.length - 1;
  }

  takeOut(index: number): void {
    this.marks = this.marks.filter((_, i) => i !== index);
    this.choose(this.chosen >= index ? this.chosen - 1 : this.chosen);
  }

  /** All corners are marked anew. */
  clear(): void {
    this.marks = this.marks.slice(0, 4).map(({ at }) => ({ px: null, at }));
    this.chosen = 0;
  }

  #set(index: number, patch: Partial<Mark>): void {
    this.marks = this.marks.map((mark, i) => (i === index ? { ...mark, ...patch } : mark));
  }
}
