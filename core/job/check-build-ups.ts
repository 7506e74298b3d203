import type { Finding } from '../finding';
import { refusal, shown, pathText } from './place';
import type { Job } from './schema';
import { zoneListsOf } from './zone-lists';

/**
 * Zones name build-ups that the job has, and an edge of a zone ends in one way. Ids that name two things are found by
 * `check-ids.ts`; a layer may name a product that only another program knows, and a rule of build-ups says so.
 */
export function checkBuildUps(job: Job): Finding[] {
  const buildUps = new Set((job.buildUps ?? []).map(({ id }) => id));
  return [
    ...zoneListsOf(job).flatMap(({ zones, path }) =>
      zones.flatMap(({ layers, edges = [] }, z): Finding[] => [
        ...(layers === undefined || buildUps.has(layers)
          ? []
          : [
              refusal(
                job,
                [...path, z, 'layers'],
                'unknown-layers',
                `is ${shown(layers)}, but no build-up of the job has that id; ${known(job)}, or take the field out for the ready layers.`,
              ),
            ]),
        ...edges.flatMap(({ edge }, e): Finding[] => {
          const first = edges.findIndex((other) => other.edge === edge);
          if (first === e) return [];
          const earlier = pathText([...path, z, 'edges', first]);
          const says = `is ${edge}, for which ${earlier} chooses an end already; take one of them out.`;
          return [refusal(job, [...path, z, 'edges', e, 'edge'], 'duplicate-edge', says)];
        }),
      ]),
    ),
  ];
}

function known({ buildUps = [] }: Job): string {
  if (buildUps.length === 0) return 'it has none of its own: add it';
  const ids = buildUps.slice(0, 8).map(({ id }) => id);
  return `name one of ${ids.join(', ')}${buildUps.length > ids.length ? ' and more' : ''}`;
}
