/** ms between two values while a hand moves: ten a second still read as following it. */
const pace = 100;

/**
 * A value that follows another at once, but at a pace while that changes with every frame: for what is dear to work out
 * or to show and may lag a little behind the hand. It never stays behind when the hand rests.
 */
export class Paced<T> {
  #beat = $state.raw(0);
  #kept: T | undefined;
  #keptAt = -Infinity;
  #isWaiting = false;

  readonly #read: () => T;
  readonly #isMoving: () => boolean;
  readonly value: T = $derived.by(() => this.#next());

  constructor(read: () => T, isMoving: () => boolean) {
    this.#read = read;
    this.#isMoving = isMoving;
  }

  #goOn(): void {
    this.#isWaiting = false;
    this.#beat++;
  }

  #next(): T {
    void this.#beat;
    const wait = this.#isMoving() ? this.#keptAt + pace - performance.now() : 0;
    if (wait > 0) {
      // Nothing is read meanwhile: the beat does that.
      if (!this.#isWaiting) setTimeout(() => this.#goOn(), wait);
      this.#isWaiting = true;
      return this.#kept as T;
    }
    this.#kept = this.#read();
    this.#keptAt = performance.now();
    return this.#kept;
  }
}
