import { newMarking } from '../../core/job/new-marking';
import { newWall, newZone, emptyJob } from '../../core/job/defaults';
import type { Marking } from '../../core/job/marking-schema';
import { photoIdOf, toBase64 } from '../../core/job/photo-bytes';
import type { Job, Photo, Zone } from '../../core/job/schema';

/** A map of two rooms, 1000 × 500 of its own units: a frame, a wall between and a round table. Invented. */
export const mapSvg = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 500">
  <rect x="5" y="5" width="990" height="490" fill="none" stroke="#204060" stroke-width="10"/>
  <path d="M600 0v320" stroke="#204060" stroke-width="10" fill="none"/>
  <circle cx="300" cy="250" r="100" fill="#c08040"/>
</svg>`;

/** The map as a job keeps it, bytes included. */
export function mapPicture(): Photo {
  const bytes = new TextEncoder().encode(mapSvg);
  return {
    id: photoIdOf(bytes),
    type: 'image/svg+xml',
    width: 20_000,
    height: 10_000,
    bytes: bytes.length,
    name: 'rooms.svg',
    data: toBase64(bytes),
  };
}

/** A type store with a chalk zone for a week plan, a writable one for a board of squares, and one for a map. */
export function markedJob(): Job {
  const empty = emptyJob('Print studio');
  const photo = mapPicture();
  let wall = newWall('B', 'Type store', 6000, 2600);
  const put = (buildUp: string, x: number, width: number, mark: (zone: Zone) => Marking) => {
    const zone = newZone(empty, wall, { x, y: 800, width, height: 1200 }, buildUp);
    wall = { ...wall, zones: [...wall.zones, { ...zone, markings: [mark(zone)] }] };
  };
  put('chalk', 200, 1600, (zone) => ({ ...newMarking(zone, 'table'), name: 'Week plan' }) as Marking);
  put('writable', 2000, 1200, (zone) =>
    newMarking(zone, 'board', { x: 2120, y: 920, width: 960, height: 960 }),
  );
  put('writable', 3400, 2400, (zone) =>
    newMarking(zone, 'picture', { x: 3600, y: 900, width: 1500, height: 900 }, photo),
  );
  return { ...empty, revision: 'A', date: '2026-03-02', walls: [wall], photos: [photo] };
}
