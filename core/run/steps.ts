/**
 * Cutting steps that screen, documents and command line share, so that all three show the same plan. A step takes one or two
 * milliseconds.
 */
export const defaultSteps = 60;

/** A delivery of more panels than this gets more steps, in proportion. */
const PANELS = 200;

/** @param steps of a delivery of up to 200 panels */
export function stepsFor(panels: number, steps: number): number {
  return Math.max(steps, Math.round((steps * panels) / PANELS));
}
