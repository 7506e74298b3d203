/** Numbers taken out in the order of their urgency, of several alike the lowest first: a binary heap. */
export class ReadyQueue {
  private readonly heap: number[] = [];

  /** @param urgency of each number; the least comes first */
  constructor(private readonly urgency: ArrayLike<number>) {}

  add(number: number): void {
    const { heap } = this;
    let at = heap.length;
    heap.push(number);
    for (let parent = (at - 1) >> 1; at > 0 && this.isBefore(number, heap[parent]!); parent = (at - 1) >> 1) {
      heap[at] = heap[parent]!;
      at = parent;
    }
    heap[at] = number;
  }

  /** undefined: there is none left. */
  next(): number | undefined {
    const { heap } = this;
    const first = heap[0];
    const last = heap.pop();
    if (first === undefined || last === undefined || heap.length === 0) return first;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && this.isBefore(heap[child + 1]!, heap[child]!)) child++;
      if (!this.isBefore(heap[child]!, last)) break;
      heap[at] = heap[child]!;
      at = child;
    }
    heap[at] = last;
    return first;
  }

  private isBefore(a: number, b: number): boolean {
    return this.urgency[a]! < this.urgency[b]! || (this.urgency[a] === this.urgency[b] && a < b);
  }
}
