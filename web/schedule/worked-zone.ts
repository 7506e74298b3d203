import type { WorkedOut, WorkedWall, WorkedZone } from '../../core/worked-out';

export function workedWall(worked: WorkedOut | null, wallId: string): WorkedWall | undefined {
  return worked?.walls.find(({ survey }) => survey.wall.id === wallId);
}

export function workedZone(worked: WorkedOut | null, wallId: string, zoneId: string): WorkedZone | undefined {
  return workedWall(worked, wallId)?.zones.find(({ area }) => area.zone.id === zoneId);
}
