import type { BuildUp } from '../job/product-schema';

/** One for each build-up that a zone can name. */
export const readyBuildUps: readonly BuildUp[] = [];
