import type { Finding } from '../../core/finding';

const order: readonly Finding['level'][] = ['error', 'warning', 'note'];

/** Of this wall first, then of the job, then of other walls; within these the gravest first. */
export function sortFindings(findings: readonly Finding[], wallId: string | undefined): Finding[] {
  const nearness = ({ wall }: Finding) => (wall === wallId ? 0 : wall === undefined ? 1 : 2);
  return [...findings].sort(
    (a, b) => order.indexOf(a.level) - order.indexOf(b.level) || nearness(a) - nearness(b),
  );
}

/** "2 warnings, 3 notes"; "Nothing to mend" if there is none. */
export function countFindings(findings: readonly Finding[]): string {
  const words = { error: 'fault', warning: 'warning', note: 'note' };
  const parts = order.flatMap((level) => {
    const count = findings.filter((finding) => finding.level === level).length;
    return count > 0 ? [`${count} ${words[level]}${count === 1 ? '' : 's'}`] : [];
  });
  return parts.join(', ') || 'Nothing to mend';
}
