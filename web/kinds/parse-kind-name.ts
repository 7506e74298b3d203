import type { NamedKind } from '../../core/job/kind-names';
import { parseName, type Entry } from '../schedule/parse-entry';

/** A name that the kind may have beside the others. */
export function parseKindName<K extends NamedKind>(
  kind: K,
  own: readonly K[],
  faultOf: (name: string, others: readonly K[]) => string | null,
): (text: string) => Entry<string> {
  return (text) => {
    const typed = parseName(text);
    if ('fault' in typed) return typed;
    const why = faultOf(
      typed.value,
      own.filter((other) => other !== kind),
    );
    return why ? { fault: why } : typed;
  };
}
