import type { Finding } from '../finding';
import { faultOfKindName, ownKindsOf } from './fitting-kinds';
import { refusal, shown } from './place';
import type { Job } from './schema';

/** Every kind of fitting has a name that no usual kind and no other one has. */
export function checkFittingKinds(job: Job): Finding[] {
  const kinds = ownKindsOf(job);
  return kinds.flatMap(({ name }, i) => {
    const fault = faultOfKindName(name, kinds.slice(0, i));
    if (!fault) return [];
    const says = `is ${shown(name)}: ${fault.charAt(0).toLowerCase()}${fault.slice(1)}`;
    return [refusal(job, ['fittingKinds', i, 'name'], 'unusable-kind', says)];
  });
}
