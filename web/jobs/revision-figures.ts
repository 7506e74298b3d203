import * as v from 'valibot';
import { figuresOf } from '../../core/drawings/job-figures';
import type { Revision } from '../../core/job/schema';
import type { WorkedOut } from '../../core/worked-out';

/** What revisions are compared by. */
export interface RevisionFigures {
  readonly stockSheets: number;
  readonly panels: number;
  readonly cut: number;
  readonly out: number;
  readonly in: number;
}

const figures = v.object({
  cutting: v.object({ newSheets: v.number() }),
  walls: v.array(
    v.object({ zones: v.array(v.object({ panels: v.array(v.object({ full: v.boolean() })) })) }),
  ),
});

/** null where the record of another program has no such figures. */
export function figuresOfRecord({ results, rack }: Revision): RevisionFigures | null {
  const parsed = v.safeParse(figures, results);
  if (!parsed.success) return null;
  const panels = parsed.output.walls.flatMap(({ zones }) => zones.flatMap((zone) => zone.panels));
  return {
    stockSheets: parsed.output.cutting.newSheets,
    panels: panels.length,
    cut: panels.filter(({ full }) => !full).length,
    out: rack?.out.length ?? 0,
    in: rack?.in.length ?? 0,
  };
}

export function figuresOfPlan(worked: WorkedOut): RevisionFigures {
  const { planned, panels, cut, rackPieces, offcutsKept } = figuresOf(worked);
  return { stockSheets: planned, panels, cut, out: rackPieces, in: offcutsKept.length };
}
