import type { Finding } from '../../core/finding';
import type { Job } from '../../core/job/schema';
import { findWall } from '../../core/job/shape';
import type { OpenJob, Selection, StationName } from '../job/open-job.svelte';

/** Where a click on a finding goes. */
export interface FindingPlace {
  readonly wallId: string;
  readonly selection: Selection;
  /** Where its object can be seen and changed; undefined: where one is. */
  readonly station: StationName | undefined;
}

/** The wall and the object that a finding is about; null if it is about the whole job. */
export function placeOfFinding({ wall: wallId, object }: Finding, job: Job): FindingPlace | null {
  const wall = wallId === undefined ? undefined : findWall(job, wallId);
  if (!wall) return null;
  const has = (list: readonly { id: string }[]) => list.some(({ id }) => id === object);
  const at = (selection: Selection, station?: StationName) => ({ wallId: wall.id, selection, station });
  if (object === undefined) return at(null);
  if (has(wall.openings)) return at({ kind: 'opening', id: object }, 'survey');
  if (has(wall.fittings)) return at({ kind: 'fitting', id: object }, 'survey');
  if (has(wall.hung ?? [])) return at({ kind: 'hung', id: object }, 'hanging');
  if (has(wall.zones)) return at({ kind: 'zone', id: object });
  if (object.startsWith(`${wall.id}-`)) return at({ kind: 'panel', id: object }, 'panels');
  if (/^\d+$/.test(object)) return at({ kind: 'vertex', id: object }, 'survey');
  return at(null);
}

/** Shows the wall and selects the object, at the station where it can be changed. */
export function showFinding(open: OpenJob, finding: Finding): void {
  const place = placeOfFinding(finding, open.job);
  if (!place) return;
  if (open.wall?.id !== place.wallId) open.showWall(place.wallId);
  const zonesHide = place.selection?.kind === 'zone' && open.station === 'survey';
  const wanted = open.station === 'drawings' ? (place.station ?? 'zones') : place.station;
  if (wanted && !shownAt(open.station, place)) open.station = wanted;
  else if (zonesHide) open.station = 'zones';
  open.selection = place.selection;
  if (isAboutGround(finding)) {
    open.station = 'survey';
    open.showLeaf('survey', 'Ground');
  }
}

/** Said and mended in one part of the schedule, not on the drawing. */
function isAboutGround({ code }: Finding): boolean {
  return code === 'not-surveyed' || code.startsWith('ground-');
}

/** Openings and fittings can be seen at every station with an elevation; panels and hung items only at theirs. */
function shownAt(station: StationName, { selection }: FindingPlace): boolean {
  if (station === 'drawings') return false;
  if (selection?.kind === 'hung') return station === 'hanging';
  return selection?.kind === 'panel' ? station === 'panels' : true;
}
