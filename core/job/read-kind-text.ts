import { readJobObject } from './read';
import type { LengthUnits } from '../lengths';
import { readExactLength } from './exact-lengths';
import type { OwnKind } from './schema';
import { plainJob, readAlso, withoutPath, type Fault, type Fields } from './text-values';

const kindFigures = ['width', 'height', 'floor', 'clearance', 'depth'];

/** A kind of fitting from its name and what follows the colon; it has passed the checks of a job file. */
export function readKind(
  name: string | null,
  clauses: string,
  units: LengthUnits,
): { ownKind: OwnKind } | Fault {
  const fields: Fields = { name };
  for (let left = clauses.trim(); left !== '';) {
    const also = /^also\s*(\{.*)$/s.exec(left);
    if (also) {
      const fault = readAlso(also[1]!, fields);
      if (fault) return fault;
      break;
    }
    const [clause = ''] = left.split(';', 1);
    left = left.slice(clause.length + 1).trim();
    const [, word = '', rest = ''] = /^\s*(\S*)\s*([\s\S]*)$/.exec(clause)!;
    const figure = readExactLength(rest, units);
    if (clause.trim() === 'round' || clause.trim() === 'electric') fields[word] = true;
    else if (kindFigures.includes(word) && figure !== null) fields[word] = figure;
    else if (clause.trim() !== '')
      return { fault: `“${clause.trim().slice(0, 60)}” is nothing that a kind has.` };
  }
  const { job, findings } = readJobObject({ ...plainJob, fittingKinds: [fields] });
  const ownKind = job?.fittingKinds?.[0];
  return ownKind ? { ownKind } : { fault: withoutPath(findings[0]?.text) };
}
