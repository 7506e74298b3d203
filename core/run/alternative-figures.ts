import { figuresOf, type JobFigures } from '../drawings/job-figures';
import { regionArea } from '../geometry/polygon';
import { buildUpKind } from '../job/build-up-kinds';
import type { WorkedOut } from '../worked-out';

/** What alternatives are weighed by: figures of the whole job, all its walls. */
export interface AlternativeFigures extends JobFigures {
  /** Usable areas of the zones by their build-up, the largest first; hundredths squared. */
  readonly areas: readonly { readonly buildUp: string; readonly label: string; readonly area: number }[];
  readonly lowerBound: number;
  readonly leastPossible: boolean;
  /** Minor units of the job's currency. */
  readonly cost: number;
  /** Findings that ask for something: errors and warnings; notes are cautions that stay. */
  readonly toMend: number;
  readonly notes: number;
}

export function alternativeFigures(worked: WorkedOut): AlternativeFigures {
  const { cutting, findings } = worked;
  const areas = new Map<string, number>();
  for (const { area } of worked.walls.flatMap(({ zones }) => zones)) {
    const { buildUp } = area.zone;
    areas.set(buildUp, (areas.get(buildUp) ?? 0) + regionArea(area.area));
  }
  const notes = findings.filter(({ level }) => level === 'note').length;
  return {
    ...figuresOf(worked),
    areas: [...areas]
      .map(([buildUp, area]) => ({ buildUp, label: buildUpKind(buildUp).label, area }))
      .sort((a, b) => b.area - a.area),
    lowerBound: cutting.lowerBound,
    leastPossible: cutting.leastPossible,
    cost: cutting.cost,
    toMend: findings.length - notes,
    notes,
  };
}
