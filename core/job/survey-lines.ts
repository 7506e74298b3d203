import { changeWall, freshId } from './changes';
import type { Job, SurveyLine, Wall } from './schema';
import { boxOfVertices } from './shape';

/** Of a new movement joint, mm; common practice, no source. */
export const usualMovementJoint = 10;

const idPrefixes: Readonly<Record<SurveyLine['kind'], string>> = {
  'board-joint': 'J',
  'movement-joint': 'M',
  cable: 'C',
  pipe: 'P',
};

/** An upright line over the whole height of the wall, in its middle, under an id that the wall has not used. */
export function newSurveyLine(wall: Wall, kind: SurveyLine['kind']): SurveyLine {
  const { x, y, width, height } = boxOfVertices(wall.outline);
  const at = Math.round(x + width / 2);
  const line = {
    id: freshId(wall, idPrefixes[kind]),
    kind,
    from: [at, y],
    to: [at, y + height],
  } satisfies SurveyLine;
  return kind === 'movement-joint' ? { ...line, width: usualMovementJoint } : line;
}

export function addSurveyLine(job: Job, wallId: string, line: SurveyLine): Job {
  return changeWall(job, wallId, (wall) => ({ ...wall, lines: [...(wall.lines ?? []), line] }));
}

export function changeSurveyLine(job: Job, wallId: string, id: string, patch: Partial<SurveyLine>): Job {
  return changeWall(job, wallId, (wall) => {
    if (!wall.lines?.some((line) => line.id === id)) return wall;
    return { ...wall, lines: wall.lines.map((line) => (line.id === id ? changed(line, patch) : line)) };
  });
}

export function removeSurveyLine(job: Job, wallId: string, id: string): Job {
  return changeWall(job, wallId, (wall) => {
    const lines = wall.lines?.filter((line) => line.id !== id);
    if (lines?.length === wall.lines?.length) return wall;
    const { lines: _, ...rest } = wall;
    return (lines && lines.length > 0 ? { ...rest, lines } : rest) as Wall;
  });
}

/** Only a movement joint has a width. */
function changed(line: SurveyLine, patch: Partial<SurveyLine>): SurveyLine {
  const { width, ...rest } = { ...line, ...patch };
  if (rest.kind !== 'movement-joint') return rest as SurveyLine;
  return { ...rest, width: width ?? usualMovementJoint } as SurveyLine;
}
