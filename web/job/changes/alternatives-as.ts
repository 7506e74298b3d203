import { alternativesOf, copyAlternative } from '../../../core/job/alternatives';
import { buildUpKind, buildUpKinds } from '../../../core/job/build-up-kinds';
import { defaultLayout } from '../../../core/job/defaults';
import type { Job, Zone } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

/**
 * Beside the alternative on the walls the same zones, each that holds magnets built up in another way: what is written or
 * chalked on stays that, where such a build-up is known.
 *
 * @param buildUp steel-panel, magnetic-coating or magnetic-film
 */
export function copyAllAs(job: Job, title: string, buildUp: string): NamedChange {
  return {
    name: `Add alternative “${title}”`,
    change: (start) => {
      const chosen = alternativesOf(start).find(({ isChosen }) => isChosen)!;
      const before = new Set(start.alternatives?.map(({ id }) => id));
      const copied = copyAlternative(start, chosen.id, freshTitle(job, title));
      return {
        ...copied,
        alternatives: copied.alternatives?.map((alternative) =>
          before.has(alternative.id)
            ? alternative
            : { ...alternative, zones: mapZones(alternative.zones, (zone) => builtAs(start, zone, buildUp)) },
        ),
      };
    },
  };
}

function builtAs(job: Job, zone: Zone, buildUp: string): Zone {
  const { magnetic, surface } = buildUpKind(zone.buildUp);
  if (magnetic === 'none' || zone.buildUp.startsWith(buildUp)) return zone;
  const { layers: _layers, layout, runsOn: _runsOn, ...rest } = zone;
  const withSurface = buildUpKinds.find(
    (kind) =>
      kind.id.startsWith(buildUp) &&
      kind.surface === surface &&
      kind.magnetic === buildUpKind(buildUp).magnetic,
  );
  const next = { ...rest, buildUp: withSurface?.id ?? buildUp } as Zone;
  if (buildUpKind(next.buildUp).magnetic !== 'steel') return next;
  return { ...next, layout: layout ?? defaultLayout(job) } as Zone;
}

function mapZones<T extends Readonly<Record<string, readonly Zone[]>>>(
  zones: T,
  change: (zone: Zone) => Zone,
): T {
  return Object.fromEntries(
    Object.entries(zones).map(([wall, list]) => [wall, list.map(change)]),
  ) as unknown as T;
}

function freshTitle(job: Job, title: string): string {
  const taken = new Set(alternativesOf(job).map((alternative) => alternative.title));
  if (!taken.has(title)) return title;
  for (let n = 2; ; n++) if (!taken.has(`${title} ${n}`)) return `${title} ${n}`;
}
