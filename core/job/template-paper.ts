import type { Paper } from './paper-sizes';
import type { Job } from './schema';

/** What full-size templates are dealt out to. */
export interface TemplatePaper {
  readonly paper: Paper;
  /** By how much neighbouring pages show the same, mm. */
  readonly overlap: number;
}

/** Common practice, no source: wide enough to glue, with a mark in it. */
export const usualTemplatePaper: TemplatePaper = { paper: 'A4', overlap: 15 };

export function templatePaperOf({ printing }: Pick<Job, 'printing'>): TemplatePaper {
  const { paper = usualTemplatePaper.paper, overlap = usualTemplatePaper.overlap } =
    printing?.templates ?? {};
  return { paper, overlap };
}
