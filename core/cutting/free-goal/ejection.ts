import type { Random } from '../random';
import type { Fits } from './fits';
import type { FreeTask } from './free-task';
import type { Sheets } from './sheets';

/** How much heavier, as a share of its area, a panel becomes each time no sheet has room for it. */
const GAIN = 0.02;
/** Panels tried to change places between two sheets after every ejection. */
const SWAPS = 10;
/** Of sheets with more panels, only so many ejections are tried. */
const FEW_PANELS = 14;
const TRIALS = 20;
/** Where there are several formats, one ejection in so many closes a sheet, so that another can be opened. */
const CLOSE_EVERY = 20;

/**
 * Forces panels in that are left out: one that fits nowhere pushes the panels out, up to three of one sheet, that have been
 * the least trouble so far; each panel weighs more, the more often it fitted nowhere. Then some panels change places at
 * random, so that the next one meets other sheets.
 *
 * Source of the idea: Y. Nagata, O. Bräysy, A powerful route minimization heuristic for the vehicle routing problem with
 * time windows, Operations Research Letters 37 (2009), written from memory; here a sheet is the route, and whether a set
 * of panels fits on it the feasibility.
 */
export class Ejection {
  private readonly weight: Float64Array;
  private readonly gain: Float64Array;
  private readonly set: Int32Array;
  private readonly byWeight: Int32Array;
  /** Work at which to pause. */
  until = 0;
  private bestSheet = -1;
  private bestSum = 0;
  private readonly out = new Int32Array(3);
  private outCount = 0;

  constructor(
    private readonly task: FreeTask,
    private readonly fits: Fits,
    private readonly sheets: Sheets,
    private readonly random: Random,
  ) {
    const largest = Math.max(...task.formats.map(({ area }) => area));
    this.weight = task.area.map((area) => area / largest);
    this.gain = this.weight.map((weight) => GAIN * weight);
    this.set = new Int32Array(task.panelCount + 1);
    this.byWeight = new Int32Array(task.panelCount + 1);
  }

  /** Closes the emptiest sheets until what is open can be paid. */
  closeSheets(): void {
    const { sheets, task } = this;
    const emptiness = (s: number) => sheets.room[s]! / task.formats[sheets.format[s]!]!.area;
    while (sheets.spent > sheets.limit) {
      let weakest = 0;
      for (let s = 1; s < sheets.count; s++) if (emptiness(s) > emptiness(weakest)) weakest = s;
      sheets.close(weakest);
    }
  }

  /** Places the panel left out last. Pauses once `until` is reached. */
  *forceIn(): Generator<void, void, void> {
    const { sheets } = this;
    const kind = sheets.left[sheets.leftCount - 1]!;
    this.fits.work += sheets.count + 1;
    const roomy = yield* this.sheetWithRoom(kind);
    if (roomy >= 0) {
      sheets.leftCount--;
      sheets.add(roomy, kind);
      return;
    }
    this.weight[kind]! += this.gain[kind]!;
    yield* this.findEjection(kind);
    if (this.bestSheet >= 0) {
      sheets.leftCount--;
      for (let i = 0; i < this.outCount; i++) sheets.leave(this.bestSheet, this.out[i]!);
      sheets.add(this.bestSheet, kind);
    }
    for (let i = 0; i < SWAPS && sheets.count > 1; i++) {
      this.swap();
      if (this.fits.work >= this.until) yield;
    }
    if (this.task.formats.length > 1 && sheets.count > 0 && this.below(CLOSE_EVERY) === 0) {
      sheets.close(this.below(sheets.count));
    }
  }

  private below(end: number): number {
    return Math.floor(this.random() * end);
  }

  private mayLie(kind: number, s: number): boolean {
    return this.task.allowed[kind * this.task.formats.length + this.sheets.format[s]!] === 1;
  }

  /** The fullest sheet that takes the panel besides what it holds, or a new one that can be paid; -1 if none. */
  private *sheetWithRoom(kind: number): Generator<void, number, void> {
    const { task, sheets } = this;
    let best = -1;
    for (let s = 0; s < sheets.count; s++) {
      const room = sheets.room[s]!;
      if (room < task.area[kind]! || (best >= 0 && room >= sheets.room[best]!) || !this.mayLie(kind, s))
        continue;
      if (this.wouldFit(s, kind, -1, -1, -1)) best = s;
      if (this.fits.work >= this.until) yield;
    }
    return best >= 0 ? best : this.openFor(kind);
  }

  /** Mostly the format whose area costs least, sometimes any. */
  private openFor(kind: number): number {
    const { formats, allowed } = this.task;
    const { sheets } = this;
    const takeAny = formats.length > 1 && this.random() < 0.3;
    let best = -1;
    let bestRate = Infinity;
    for (let f = 0; f < formats.length; f++) {
      const { charge, available, area } = formats[f]!;
      if (allowed[kind * formats.length + f] === 0) continue;
      if (sheets.spent + charge > sheets.limit || sheets.opened[f]! >= available) continue;
      const rate = takeAny ? this.random() : charge / area;
      if (rate >= bestRate) continue;
      best = f;
      bestRate = rate;
    }
    return best < 0 ? -1 : sheets.open(best);
  }

  /** Whether the sheet takes the panel (-1 for none) once those at places a, b, c of it are out; -1 for none. */
  private wouldFit(s: number, kind: number, a: number, b: number, c: number): boolean {
    const { sheets, fits, set, task } = this;
    const from = s * sheets.most;
    const size = sheets.size[s]!;
    let low = sheets.low[s]!;
    let high = sheets.high[s]!;
    let room = sheets.room[s]!;
    if (kind >= 0) {
      low += fits.codeLow[kind]!;
      high += fits.codeHigh[kind]!;
      room -= task.area[kind]!;
    }
    let count = 0;
    for (let i = 0; i < size; i++) {
      const own = sheets.members[from + i]!;
      if (i === a || i === b || i === c) {
        low -= fits.codeLow[own]!;
        high -= fits.codeHigh[own]!;
        room += task.area[own]!;
      } else set[count++] = own;
    }
    if (room < 0) return false;
    if (kind >= 0) set[count++] = kind;
    return fits.fits(sheets.format[s]!, set, count, low | 0, high | 0);
  }

  /** The sheet and the panels on it, least in weight, that must go so that the panel fits. */
  private *findEjection(kind: number): Generator<void, void, void> {
    const { sheets } = this;
    this.bestSheet = -1;
    this.bestSum = Infinity;
    const offset = this.below(sheets.count);
    for (let n = 0; n < sheets.count; n++) {
      const s = n + offset < sheets.count ? n + offset : n + offset - sheets.count;
      if (!this.mayLie(kind, s)) continue;
      this.orderByWeight(s);
      yield* this.ejectFrom(s, kind);
    }
    // Where no sheet is open, or none takes the panel, trying again must not be free.
    this.fits.work += 10;
    if (this.fits.work >= this.until) yield;
  }

  private orderByWeight(s: number): void {
    const { sheets, weight, byWeight } = this;
    const from = s * sheets.most;
    for (let i = 0; i < sheets.size[s]!; i++) {
      const own = weight[sheets.members[from + i]!]!;
      let to = i;
      for (; to > 0 && weight[sheets.members[from + byWeight[to - 1]!]!]! > own; to--) {
        byWeight[to] = byWeight[to - 1]!;
      }
      byWeight[to] = i;
    }
  }

  /** Tries one panel, two and three of the sheet, in the order of weight; notes what is less than anything so far. */
  private *ejectFrom(s: number, kind: number): Generator<void, void, void> {
    const { sheets, task, weight, byWeight } = this;
    const from = s * sheets.most;
    const size = sheets.size[s]!;
    const need = task.area[kind]! - sheets.room[s]!;
    const { members } = sheets;
    let trials = size > FEW_PANELS ? TRIALS : Infinity;
    for (let i = 0; i < size && trials > 0; i++) {
      const a = members[from + byWeight[i]!]!;
      const one = weight[a]!;
      if (one >= this.bestSum) return;
      if (a === kind) continue;
      if (task.area[a]! >= need && trials-- > 0) {
        if (this.fits.work >= this.until) yield;
        if (this.wouldFit(s, kind, byWeight[i]!, -1, -1)) this.note(s, one, a, -1, -1);
      }
      for (let j = 0; j < i && trials > 0; j++) {
        const b = members[from + byWeight[j]!]!;
        const two = one + weight[b]!;
        if (two >= this.bestSum) break;
        if (b === kind) continue;
        if (task.area[a]! + task.area[b]! >= need && trials-- > 0) {
          if (this.fits.work >= this.until) yield;
          if (this.wouldFit(s, kind, byWeight[i]!, byWeight[j]!, -1)) this.note(s, two, a, b, -1);
        }
        for (let k = 0; k < j && trials > 0; k++) {
          const c = members[from + byWeight[k]!]!;
          const three = two + weight[c]!;
          if (three >= this.bestSum) break;
          if (c === kind || task.area[a]! + task.area[b]! + task.area[c]! < need || trials-- <= 0) continue;
          if (this.fits.work >= this.until) yield;
          if (this.wouldFit(s, kind, byWeight[i]!, byWeight[j]!, byWeight[k]!)) this.note(s, three, a, b, c);
        }
      }
    }
  }

  private note(s: number, sum: number, a: number, b: number, c: number): void {
    this.bestSheet = s;
    this.bestSum = sum;
    this.out[0] = a;
    this.out[1] = b;
    this.out[2] = c;
    this.outCount = b < 0 ? 1 : c < 0 ? 2 : 3;
  }

  /** Changes a panel of one sheet for one of another, or moves it there, if both still fit. */
  private swap(): void {
    const { sheets, task } = this;
    this.fits.work++;
    const s = this.below(sheets.count);
    let t = this.below(sheets.count - 1);
    if (t >= s) t++;
    const i = this.below(sheets.size[s]!);
    const j = this.below(sheets.size[t]! + 1);
    const a = sheets.members[s * sheets.most + i]!;
    if (!this.mayLie(a, t)) return;
    if (j === sheets.size[t]!) {
      if (!this.wouldFit(t, a, -1, -1, -1)) return;
      // What stays fits, but trying must find it too when the sheet is written.
      if (sheets.size[s]! > 1 && !this.wouldFit(s, -1, i, -1, -1)) return;
      sheets.drop(s, a);
      sheets.add(t, a);
      if (sheets.size[s] === 0) sheets.close(s);
      return;
    }
    const b = sheets.members[t * sheets.most + j]!;
    if (a === b || !this.mayLie(b, s)) return;
    if (sheets.room[s]! + task.area[a]! < task.area[b]!) return;
    if (!this.wouldFit(t, a, j, -1, -1) || !this.wouldFit(s, b, i, -1, -1)) return;
    sheets.drop(s, a);
    sheets.drop(t, b);
    sheets.add(s, b);
    sheets.add(t, a);
  }
}
