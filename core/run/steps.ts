/** Cutting steps that screen, documents and command line share, so that all three show the same plan. */
export const defaultSteps = 60;
