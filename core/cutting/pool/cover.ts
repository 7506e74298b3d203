import type { NestedSheet } from '../nest';
import type { CuttingTask } from '../plan';
import type { Random } from '../random';
import type { PooledSheet } from './sheet-pool';

/**
 * Sheets chosen from the pool, each as often as wanted, under a limit of their charge, and what they leave
 * uncovered. A sheet is worth the weights of the panels that it covers and nothing else does; every turn
 * exchanges sheets, and what stays uncovered gains weight.
 */
export class Cover {
  /** Kinds of which panels are uncovered. */
  uncovered = 0;
  /** Entries looked at since it was last set to 0. */
  work = 0;
  private charge = 0;
  private now = 0;
  /** Chosen sheets, each as often as it is chosen. */
  private readonly chosen: number[] = [];
  private readonly covered: Int32Array;
  private readonly weight: Float64Array;
  /** When a sheet was last taken or given back; oldest decide ties. */
  private readonly changed: Int32Array;
  /** A sheet given back comes again only after something near it has changed. */
  private readonly isBarred: Uint8Array;
  /** By kind, the sheets that hold it. */
  private readonly holders: Int32Array[];
  private readonly stockUsed: Int32Array;
  private readonly rackUsed: Uint8Array;

  constructor(
    private readonly sheets: readonly PooledSheet[],
    private readonly demand: readonly number[],
    private readonly task: CuttingTask,
    private readonly random: Random,
  ) {
    this.covered = new Int32Array(demand.length);
    this.weight = new Float64Array(demand.length).fill(1);
    this.changed = new Int32Array(sheets.length);
    this.isBarred = new Uint8Array(sheets.length);
    const holders: number[][] = demand.map(() => []);
    sheets.forEach(({ kinds }, number) => kinds.forEach((kind) => holders[kind]!.push(number)));
    this.holders = holders.map((numbers) => Int32Array.from(numbers));
    this.stockUsed = new Int32Array(task.stock.length);
    this.rackUsed = new Uint8Array(task.rack.length);
    this.uncovered = demand.filter((count) => count > 0).length;
  }

  coversAll(): boolean {
    return this.holders.every(({ length }, kind) => length > 0 || this.demand[kind] === 0);
  }

  chosenSheets(): NestedSheet[] {
    return this.chosen.map((number) => this.sheets[number]!.sheet);
  }

  /** Bought stock sheets of a format. */
  chosenOf(stock: number): number {
    return this.stockUsed[stock]!;
  }

  /** What is uncovered, by kind. */
  rest(): number[] {
    return this.demand.map((count, kind) => Math.max(0, count - this.covered[kind]!));
  }

  /** Forgets a part of what is chosen and of the weights, and fills up greedily. */
  open(limit: number): void {
    const kept = this.random() < 0.5 ? 0 : 0.5;
    for (let i = this.chosen.length - 1; i >= 0; i--) if (this.random() >= kept) this.giveBack(i);
    if (kept === 0) this.weight.fill(1);
    this.isBarred.fill(0);
    while (this.uncovered > 0 && this.takeFor(this.hungry(), limit));
  }

  /** Gives a sheet or more back, takes one that covers an uncovered panel, and lets what is left weigh more. */
  turn(limit: number): void {
    this.now++;
    if (this.chosen.length > 0) this.giveBack(this.leastMissed());
    while (this.charge > limit && this.chosen.length > 0) this.giveBack(this.leastMissed());
    if (this.uncovered === 0) return;
    let kind = this.hungry();
    let last = -1;
    while (this.uncovered > 0) {
      const number = this.bestFor(kind);
      if (number < 0) break;
      // A dearer sheet than the one given back needs further room.
      const { charge } = this.sheets[number]!;
      if (this.charge + charge > limit) {
        if (last >= 0 || charge > limit) break;
        while (this.charge + charge > limit && this.chosen.length > 0) this.giveBack(this.leastMissed());
      }
      last = number;
      this.take(number);
      if (this.uncovered > 0) kind = this.hungry();
    }
    if (this.uncovered === 0) return;
    for (let k = 0; k < this.weight.length; k++) if (this.covered[k]! < this.demand[k]!) this.weight[k]!++;
  }

  private takeFor(kind: number, limit: number): boolean {
    const number = this.bestFor(kind);
    if (number < 0 || this.charge + this.sheets[number]!.charge > limit) return false;
    this.take(number);
    return true;
  }

  /** An uncovered kind, each as likely as the others. */
  private hungry(): number {
    let left = 1 + Math.floor(this.random() * this.uncovered);
    for (let kind = 0; ; kind++) {
      if (this.covered[kind]! < this.demand[kind]! && --left === 0) return kind;
    }
  }

  /** The sheet that holds this kind and is worth the most for its charge; -1 if none may be taken. */
  private bestFor(kind: number): number {
    const holders = this.holders[kind]!;
    let best = -1;
    let bestWorth = 0;
    for (const number of holders) {
      if (this.isBarred[number]) continue;
      const { sheet, charge } = this.sheets[number]!;
      if (sheet.rack >= 0) {
        if (this.rackUsed[sheet.rack]) continue;
      } else if (this.stockUsed[sheet.stock]! >= (this.task.stock[sheet.stock]!.available ?? Infinity))
        continue;
      const worth = this.gain(number) / charge;
      if (
        worth < bestWorth ||
        (worth === bestWorth && best >= 0 && this.changed[number]! >= this.changed[best]!)
      )
        continue;
      best = number;
      bestWorth = worth;
    }
    return best;
  }

  private gain(number: number): number {
    const { kinds, counts } = this.sheets[number]!;
    let gain = 0;
    this.work += kinds.length;
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i]!;
      const missing = this.demand[kind]! - this.covered[kind]!;
      if (missing > 0) gain += this.weight[kind]! * Math.min(missing, counts[i]!);
    }
    return gain;
  }

  /** Place in `chosen` of the sheet that would be missed least for its charge. */
  private leastMissed(): number {
    let best = -1;
    let leastLoss = Infinity;
    for (let i = 0; i < this.chosen.length; i++) {
      const number = this.chosen[i]!;
      // What the last turn took stays for this one, or the same two would be exchanged for ever.
      if (this.changed[number] === this.now - 1) continue;
      const { kinds, counts, charge } = this.sheets[number]!;
      let loss = 0;
      this.work += kinds.length;
      for (let j = 0; j < kinds.length; j++) {
        const kind = kinds[j]!;
        const spare = Math.max(0, this.covered[kind]! - this.demand[kind]!);
        if (spare < counts[j]!) loss += this.weight[kind]! * (counts[j]! - spare);
      }
      loss /= charge;
      if (
        loss > leastLoss ||
        (loss === leastLoss && best >= 0 && this.changed[number]! >= this.changed[this.chosen[best]!]!)
      )
        continue;
      best = i;
      leastLoss = loss;
    }
    return best < 0 ? Math.floor(this.random() * this.chosen.length) : best;
  }

  private take(number: number): void {
    this.chosen.push(number);
    this.count(number, 1);
  }

  private giveBack(place: number): void {
    const number = this.chosen[place]!;
    this.chosen[place] = this.chosen[this.chosen.length - 1]!;
    this.chosen.pop();
    this.count(number, -1);
    this.isBarred[number] = 1;
  }

  private count(number: number, sign: 1 | -1): void {
    const { sheet, kinds, counts, charge } = this.sheets[number]!;
    this.charge += sign * charge;
    this.changed[number] = this.now;
    if (sheet.rack >= 0) this.rackUsed[sheet.rack] = sign > 0 ? 1 : 0;
    else this.stockUsed[sheet.stock]! += sign;
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i]!;
      const before = this.covered[kind]!;
      const after = before + sign * counts[i]!;
      this.covered[kind] = after;
      const wanted = this.demand[kind]!;
      if (before >= wanted !== after >= wanted) {
        this.uncovered -= sign;
        // What holds the kind is worth something else now.
        const holders = this.holders[kind]!;
        this.work += holders.length;
        for (const holder of holders) this.isBarred[holder] = 0;
      }
    }
  }
}
