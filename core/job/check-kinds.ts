import type { Finding } from '../finding';
import { faultOfKindName, ownKindsOf } from './fitting-kinds';
import type { NamedKind } from './kind-names';
import { faultOfHungKindName, ownHungKindsOf } from './own-hung-kinds';
import { refusal, shown } from './place';
import type { Job } from './schema';

/** Every kind that the user has made has a name that no usual kind and no other one of its list has. */
export function checkKinds(job: Job): Finding[] {
  return [
    ...checkNames(job, 'fittingKinds', ownKindsOf(job), faultOfKindName),
    ...checkNames(job, 'hungKinds', ownHungKindsOf(job), faultOfHungKindName),
  ];
}

function checkNames<K extends NamedKind>(
  job: Job,
  list: 'fittingKinds' | 'hungKinds',
  kinds: readonly K[],
  faultOf: (name: string, others: readonly K[]) => string | null,
): Finding[] {
  return kinds.flatMap(({ name }, i) => {
    const fault = faultOf(name, kinds.slice(0, i));
    if (!fault) return [];
    const says = `is ${shown(name)}: ${fault.charAt(0).toLowerCase()}${fault.slice(1)}`;
    return [refusal(job, [list, i, 'name'], 'unusable-kind', says)];
  });
}
