/** Said between the tabs that have one job open. */
type Said =
  | { readonly kind: 'wanted'; readonly job: string; readonly by: string }
  | { readonly kind: 'given'; readonly job: string; readonly to: string; readonly fault: string | null };

interface Claim {
  readonly job: string;
  readonly abort: AbortController;
  isHeld: boolean;
  letGo: () => void;
}

interface Holder {
  /** Finishes what is under way before another tab gets the right; a sentence if that cannot be. */
  readonly handOver: () => Promise<string | null>;
  /** The right came to this tab, after it had been another's. */
  readonly gained: () => void;
  /** The right went to another tab. */
  readonly lost: () => void;
}

/** A page that is loaded again meets its own right until the browser has taken the old page down. */
const patience = 400;
/** A tab that does not answer so long is asleep, and the right is taken from it. */
const longestAnswer = 2500;

/**
 * The right to change a job, which one tab has at a time: a Web Lock named after the job. Whoever waits gets it when the
 * tab that has it is closed, or at once by taking it over: then the other tab first finishes writing. Without Web Locks
 * (a page over plain http) every tab has it.
 */
export class EditingRight {
  readonly #locks: LockManager | undefined = navigator.locks;
  readonly #channel = new BroadcastChannel('lodeplan-editing');
  readonly #tab: string;
  readonly #holder: Holder;
  #claim: Claim | null = null;
  #answered: ((fault: string | null) => void) | null = null;

  constructor(tab: string, holder: Holder) {
    this.#tab = tab;
    this.#holder = holder;
    this.#channel.onmessage = ({ data }: MessageEvent<Said>) => void this.#hear(data);
  }

  get isHeld(): boolean {
    return !this.#locks || this.#claim === null || this.#claim.isHeld;
  }

  /** Claims the right to a job and lets go of the one before. @returns whether this tab has it now */
  async claim(job: string): Promise<boolean> {
    if (!this.#locks) return true;
    if (this.#claim?.job === job) return this.#claim.isHeld;
    this.#release();
    return this.#request(job, {});
  }

  /** Takes the right over from the tab that has it. @returns why it stays there, or null */
  async takeOver(): Promise<string | null> {
    const claim = this.#claim;
    if (!claim || claim.isHeld) return null;
    const fault = await new Promise<string | null>((resolve) => {
      this.#answered = resolve;
      setTimeout(() => resolve(null), longestAnswer);
      this.#say({ kind: 'wanted', job: claim.job, by: this.#tab });
    });
    this.#answered = null;
    if (fault !== null || claim !== this.#claim || claim.isHeld) return fault;
    claim.abort.abort();
    await this.#request(claim.job, { steal: true });
    this.#holder.gained();
    return null;
  }

  /** The jobs that some tab has the right to change. */
  async inUse(): Promise<ReadonlySet<string>> {
    const held = (await this.#locks?.query())?.held ?? [];
    return new Set(held.flatMap(({ name }) => (name?.startsWith(prefix) ? [name.slice(prefix.length)] : [])));
  }

  /** @param waits another tab has just taken the right: whenever it comes back, it was another's in between */
  #request(job: string, { steal = false, waits = false }): Promise<boolean> {
    const claim: Claim = { job, abort: new AbortController(), isHeld: false, letGo: () => undefined };
    this.#claim = claim;
    return new Promise((resolve) => {
      let isLate = waits;
      const answer = () => {
        if (!isLate) resolve(claim.isHeld);
        isLate = true;
      };
      setTimeout(answer, patience);
      const held = () => {
        if (this.#claim !== claim) return;
        claim.isHeld = true;
        const release = new Promise<void>((letGo) => (claim.letGo = letGo));
        if (isLate) this.#holder.gained();
        answer();
        return release;
      };
      // An option that is false may not stand beside a signal.
      const options = steal ? { steal } : { signal: claim.abort.signal };
      this.#locks!.request(prefix + job, options, held).catch(() => this.#missed(claim));
    });
  }

  /** A request was given up by this tab itself, or what it held was taken over. */
  #missed(claim: Claim): void {
    if (this.#claim !== claim || !claim.isHeld) return;
    void this.#request(claim.job, { waits: true });
    this.#holder.lost();
  }

  #release(): void {
    const claim = this.#claim;
    this.#claim = null;
    claim?.abort.abort();
    claim?.letGo();
  }

  async #hear(said: Said): Promise<void> {
    if (said.job !== this.#claim?.job) return;
    if (said.kind === 'given') {
      if (said.to === this.#tab) this.#answered?.(said.fault);
    } else if (this.#claim.isHeld) {
      const fault = await this.#holder.handOver();
      this.#say({ kind: 'given', job: said.job, to: said.by, fault });
    }
  }

  #say(said: Said): void {
    this.#channel.postMessage(said);
  }
}

const prefix = 'lodeplan-job-';
