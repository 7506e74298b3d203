import { freshBuildUpId, usersOf } from '../../../core/build-up/change-layers';
import { buildUpOf } from '../../../core/build-up/resolve';
import { mendBuildUp, type Remark } from '../../../core/build-up/rules';
import { changeJob, changeObject } from '../../../core/job/changes';
import type { FinishLevel } from '../../../core/job/offer-schema';
import type { BuildUp, EdgeEnd, Layer } from '../../../core/job/product-schema';
import type { Job, Wall, Zone } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

/** The layers of a zone, as they stand in the job's own build-up or in the ready one. */
export function layersOf(job: Job, wall: Wall, zone: Zone): readonly Layer[] {
  return buildUpOf(job, zone, wall.ground).layers.map(({ layer }) => layer);
}

/** Other layers for a zone: its own build-up is changed, for every zone that has it, or made from the ready one. */
export function setLayers(wallId: string, zone: Zone, layers: readonly Layer[], what: string): NamedChange {
  return {
    name: `${what} of zone ${zone.id}`,
    change: (job) => {
      const buildUps = job.buildUps ?? [];
      const at = buildUps.findIndex(({ id }) => id === zone.layers);
      if (at >= 0) {
        return changeJob(job, { buildUps: buildUps.with(at, { ...buildUps[at]!, layers: [...layers] }) });
      }
      const id = freshBuildUpId(job);
      const own: BuildUp = { id, name: '', kind: zone.buildUp, layers: [...layers] };
      return changeObject<Zone>(
        changeJob(job, { buildUps: [...buildUps, own] }),
        wallId,
        { kind: 'zone', id: zone.id },
        { layers: id },
      );
    },
  };
}

/** What a rule asks of a zone's layers, done. */
export function mendLayers(wallId: string, zoneId: string, { code, mend }: Remark): NamedChange {
  return {
    name: `Mend layers of zone ${zoneId}: ${mend}`,
    change: (job) => mendBuildUp(job, wallId, zoneId, code),
  };
}

/** One of the job's own build-ups, or the ready one. */
export function chooseLayers(wallId: string, zoneId: string, layers: string | undefined): NamedChange {
  return {
    name: layers ? `Choose layers ${layers} for zone ${zoneId}` : `Ready layers for zone ${zoneId}`,
    change: (job) => {
      const changed = changeObject<Zone>(job, wallId, { kind: 'zone', id: zoneId }, { layers });
      return withoutUnused(changed);
    },
  };
}

export function renameLayers(id: string, name: string): NamedChange {
  return {
    name: `Name layers ${id}`,
    change: (job) =>
      changeJob(job, {
        buildUps: job.buildUps?.map((buildUp) => (buildUp.id === id ? { ...buildUp, name } : buildUp)),
      }),
  };
}

/** How the layers end along an edge; undefined: as is usual there. */
export function setEdgeEnd(
  wallId: string,
  zone: Zone,
  edge: number,
  end: Omit<EdgeEnd, 'edge'> | undefined,
): NamedChange {
  return {
    name: `Set end of edge ${edge} of zone ${zone.id}`,
    change: (job) => {
      const others = (zone.edges ?? []).filter((entry) => entry.edge !== edge);
      const edges = end ? [...others, { ...end, edge } as EdgeEnd].sort((a, b) => a.edge - b.edge) : others;
      return changeObject<Zone>(
        job,
        wallId,
        { kind: 'zone', id: zone.id },
        { edges: edges.length > 0 ? edges : undefined },
      );
    },
  };
}

/** The level of finish of a zone; undefined: the offer's. */
export function setFinishLevel(wallId: string, zone: Zone, level: FinishLevel | undefined): NamedChange {
  return {
    name: `Set level of finish of zone ${zone.id}`,
    change: (job) => changeObject<Zone>(job, wallId, { kind: 'zone', id: zone.id }, { finishLevel: level }),
  };
}

/** What has no name and no zone any more was only made for one. */
function withoutUnused(job: Job): Job {
  const buildUps = job.buildUps?.filter(({ id, name }) => name !== '' || usersOf(job, id).length > 0);
  return changeJob(job, { buildUps: buildUps && buildUps.length > 0 ? buildUps : undefined });
}
