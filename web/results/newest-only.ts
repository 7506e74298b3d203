/** Asks one question at a time, and of those that came meanwhile the newest: a fast hand leaves no queue behind it. */
export class NewestOnly<T> {
  readonly #ask: (question: T) => void;
  #isAsked = false;
  #next: T | null = null;

  constructor(ask: (question: T) => void) {
    this.#ask = ask;
  }

  ask(question: T): void {
    this.#next = question;
    if (!this.#isAsked) this.#goOn();
  }

  /** To be called with every answer. */
  answered(): void {
    this.#isAsked = false;
    this.#goOn();
  }

  /** Nothing that was asked will be answered. */
  forget(): void {
    this.#isAsked = false;
    this.#next = null;
  }

  #goOn(): void {
    const question = this.#next;
    if (question === null) return;
    this.#isAsked = true;
    this.#next = null;
    this.#ask(question);
  }
}
