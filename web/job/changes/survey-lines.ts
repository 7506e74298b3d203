import { surveyLineNames } from '../../../core/job/names';
import type { SurveyLine, Wall } from '../../../core/job/schema';
import {
  addSurveyLine,
  changeSurveyLine,
  newSurveyLine,
  removeSurveyLine,
} from '../../../core/job/survey-lines';
import type { NamedChange } from './named-change';

export function nameOfLine({ kind, id }: SurveyLine): string {
  return `${surveyLineNames[kind]} ${id}`;
}

export function putInLine(wall: Wall, kind: SurveyLine['kind']): NamedChange {
  const line = newSurveyLine(wall, kind);
  return { name: `Put in ${nameOfLine(line)}`, change: (job) => addSurveyLine(job, wall.id, line) };
}

export function setLine(wallId: string, line: SurveyLine, patch: Partial<SurveyLine>): NamedChange {
  return {
    name: `Change ${nameOfLine(line)}`,
    change: (job) => changeSurveyLine(job, wallId, line.id, patch),
  };
}

export function takeOutLine(wallId: string, line: SurveyLine): NamedChange {
  return { name: `Delete ${nameOfLine(line)}`, change: (job) => removeSurveyLine(job, wallId, line.id) };
}
