import { SvelteSet } from 'svelte/reactivity';

/** Up to this many rows all have their fields. */
const fewRows = 24;
/** px above and below what of the table shows. */
const margin = 80;

/**
 * Which rows of a long table lie in or near the part that shows. Only these need fields: a field costs the browser
 * more at every frame than all words of its row. A row that has the focus stays near wherever it is scrolled to.
 */
export class NearRows {
  readonly #near = new SvelteSet<string>();
  #observer: IntersectionObserver | undefined;

  /**
   * @param key the row's `data-ref`
   * @param settled false while a hand moves something on the drawing: nobody types then, and the frame belongs to that
   */
  has(key: string, rows: number, settled: boolean): boolean {
    return rows <= fewRows || (settled && this.#near.has(key));
  }

  /** To be attached to every row. */
  readonly watch = (row: HTMLTableRowElement): (() => void) => {
    this.#observer ??= new IntersectionObserver((entries) => this.#see(entries), {
      root: row.closest('[role="tabpanel"]'),
      rootMargin: `${margin}px 0px`,
    });
    this.#observer.observe(row);
    const key = row.dataset.ref!;
    return () => {
      this.#observer?.unobserve(row);
      this.#near.delete(key);
    };
  };

  #see(entries: IntersectionObserverEntry[]): void {
    for (const { target, isIntersecting } of entries) {
      const key = (target as HTMLElement).dataset.ref!;
      if (isIntersecting) this.#near.add(key);
      else if (!target.contains(document.activeElement)) this.#near.delete(key);
    }
  }
}
