import { countText } from '../../core/drawings/figure-text';
import type { Finding } from '../../core/finding';

const order: readonly Finding['level'][] = ['error', 'warning', 'note'];

/** Of this wall first, then of the job, then of other walls; within these the gravest first. */
export function sortFindings(findings: readonly Finding[], wallId: string | undefined): Finding[] {
  const nearness = ({ wall }: Finding) => (wall === wallId ? 0 : wall === undefined ? 1 : 2);
  return [...findings].sort(
    (a, b) => order.indexOf(a.level) - order.indexOf(b.level) || nearness(a) - nearness(b),
  );
}

/** A caution holds for the whole job and asks for care, not for a change: a note about no wall and no object. */
export function isCaution({ level, wall, object }: Finding): boolean {
  return level === 'note' && wall === undefined && object === undefined;
}

/** "2 warnings, 1 note, 6 cautions", "No warnings, 6 cautions"; "Nothing to mend" if there is none. */
export function countFindings(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'Nothing to mend';
  const count = (one: string, test: (finding: Finding) => boolean) => {
    const found = findings.filter(test).length;
    return found > 0 ? [countText(found, one)] : [];
  };
  const asking = [
    ...count('fault', ({ level }) => level === 'error'),
    ...count('warning', ({ level }) => level === 'warning'),
  ];
  return [
    ...(asking.length > 0 ? asking : ['No warnings']),
    ...count('note', (finding) => finding.level === 'note' && !isCaution(finding)),
    ...count('caution', isCaution),
  ].join(', ');
}
