import type { Finding } from '../finding';
import { refusal, shown } from './place';
import type { Job } from './schema';

/** Every alternative has an id of its own, the chosen one too, and zones only on walls that the job has. */
export function checkAlternatives(job: Job): Finding[] {
  const walls = new Set(job.walls.map(({ id }) => id));
  const chosen = job.chosenAlternative?.id;
  return (job.alternatives ?? []).flatMap(({ id, zones }, a): Finding[] => {
    const findings: Finding[] = [];
    if (id === chosen) {
      const says = `is ${shown(id)}, which chosenAlternative.id has already; give one of them another id.`;
      findings.push(refusal(job, ['alternatives', a, 'id'], 'duplicate-id', says));
    }
    for (const wallId of Object.keys(zones)) {
      if (walls.has(wallId)) continue;
      const says = `are zones of wall ${shown(wallId)}, which the job does not have; take them out or add the wall.`;
      findings.push(refusal(job, ['alternatives', a, 'zones', wallId], 'unknown-wall', says));
    }
    return findings;
  });
}
