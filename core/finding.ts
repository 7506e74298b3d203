/**
 * What the job shows at this moment: a sentence that says what, where and how to mend it.
 *
 * `error` makes a job impossible to work out, `warning` wants a decision, `note` informs.
 * `wall` and `object` name what a click goes to; `object` is an opening, fitting, zone, panel mark or vertex.
 */
export interface Finding {
  readonly level: 'error' | 'warning' | 'note';
  /** Stable, kebab-case; tests and other programs match on it, people read `text`. */
  readonly code: string;
  readonly wall?: string;
  readonly object?: string;
  readonly text: string;
}
