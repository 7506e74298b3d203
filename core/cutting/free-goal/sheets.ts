import type { NestedSheet } from '../nest';
import type { Fits } from './fits';
import type { FreeTask } from './free-task';

/** Open sheets, each as the set of panels on it, and the panels left out. Where on a sheet they lie stays open. */
export class Sheets {
  count = 0;
  /** Charges of what is open, and how much they may be. */
  spent = 0;
  limit = Infinity;
  readonly format: Int32Array;
  readonly size: Int32Array;
  /** Kinds on sheet s from s × most on. */
  readonly members: Int32Array;
  readonly most: number;
  /** Area not taken. */
  readonly room: Float64Array;
  /** Sums of codes, see Fits. */
  readonly low: Int32Array;
  readonly high: Int32Array;
  /** How many of each format are open. */
  readonly opened: Int32Array;
  readonly left: Int32Array;
  leftCount = 0;

  constructor(
    private readonly task: FreeTask,
    private readonly fits: Fits,
  ) {
    const { panelCount, formats, area } = task;
    const largest = Math.max(...formats.map((format) => format.area));
    const smallest = area.reduce((least, own) => Math.min(least, own), Infinity);
    this.most = Math.min(panelCount, Math.floor(largest / smallest)) + 1;
    this.format = new Int32Array(panelCount + 1);
    this.size = new Int32Array(panelCount + 1);
    this.members = new Int32Array((panelCount + 1) * this.most);
    this.room = new Float64Array(panelCount + 1);
    this.low = new Int32Array(panelCount + 1);
    this.high = new Int32Array(panelCount + 1);
    this.opened = new Int32Array(formats.length);
    this.left = new Int32Array(panelCount);
  }

  /** @returns its number, the last */
  open(format: number): number {
    const s = this.count++;
    const { area, charge } = this.task.formats[format]!;
    this.format[s] = format;
    this.size[s] = 0;
    this.room[s] = area;
    this.low[s] = this.fits.low(format);
    this.high[s] = this.fits.high(format);
    this.opened[format]!++;
    this.spent += charge;
    return s;
  }

  /** Leaves all its panels out; the last sheet takes its number. */
  close(s: number): void {
    const format = this.format[s]!;
    for (let i = 0; i < this.size[s]!; i++) this.left[this.leftCount++] = this.members[s * this.most + i]!;
    this.opened[format]!--;
    this.spent -= this.task.formats[format]!.charge;
    const last = --this.count;
    if (last === s) return;
    this.format[s] = this.format[last]!;
    this.size[s] = this.size[last]!;
    this.room[s] = this.room[last]!;
    this.low[s] = this.low[last]!;
    this.high[s] = this.high[last]!;
    this.members.copyWithin(s * this.most, last * this.most, last * this.most + this.size[last]!);
  }

  add(s: number, kind: number): void {
    this.members[s * this.most + this.size[s]!] = kind;
    this.size[s]!++;
    this.room[s]! -= this.task.area[kind]!;
    this.low[s]! += this.fits.codeLow[kind]!;
    this.high[s]! += this.fits.codeHigh[kind]!;
  }

  drop(s: number, kind: number): void {
    const from = s * this.most;
    const last = --this.size[s]!;
    let i = from;
    while (this.members[i] !== kind) i++;
    this.members[i] = this.members[from + last]!;
    this.room[s]! += this.task.area[kind]!;
    this.low[s]! -= this.fits.codeLow[kind]!;
    this.high[s]! -= this.fits.codeHigh[kind]!;
  }

  /** Takes a panel off a sheet and leaves it out. */
  leave(s: number, kind: number): void {
    this.drop(s, kind);
    this.left[this.leftCount++] = kind;
  }

  /** Takes a panel from those left out; order is kept. */
  takeBack(place: number): void {
    this.left.copyWithin(place, place + 1, this.leftCount--);
  }

  write(): NestedSheet[] {
    const { formats } = this.task;
    return Array.from({ length: this.count }, (_, s) => {
      const format = this.format[s]!;
      const set = this.members.subarray(s * this.most, s * this.most + this.size[s]!);
      return {
        stock: formats[format]!.stock,
        rack: formats[format]!.rack,
        filled: this.fits.layOut(format, set, set.length),
      };
    });
  }
}
