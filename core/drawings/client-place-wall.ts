import type { Box, Ring } from '../geometry/polygon';
import type { ToPaper } from './client-view-wall';
import type { PaperBox } from './paper';
import { figureHeight, figureWidth } from './standing-figure';

/** The wall and the figure beside it, together in the middle of the room, on one floor. */
export function placeWall(ring: Ring, box: Box, room: PaperBox) {
  const besideWall = (figureWidth + 260) * 100;
  const wide = box.right - box.left + besideWall;
  const high = Math.max(box.top - box.bottom, (figureHeight + 100) * 100);
  const scale = Math.min((room.right - room.left) / wide, (room.top - room.bottom) / high);
  // Whoever stands beside a stair wall stands at its foot.
  const footAt = (x: number) => Math.min(...ring.filter((point) => point.x === x).map(({ y }) => y));
  const standsLeft = footAt(box.right) > footAt(box.left);
  const left = (room.left + room.right - wide * scale) / 2 + (standsLeft ? besideWall * scale : 0);
  // A low wide wall sits a little under the middle of its room, so that the floor carries the picture.
  const floor = room.bottom + (room.top - room.bottom - high * scale) * 0.42;
  const toPaper: ToPaper = ({ x, y }) => ({
    x: left + (x - box.left) * scale,
    y: floor + (y - box.bottom) * scale,
  });
  const away = besideWall - (figureWidth / 2) * 100;
  const figureFoot = toPaper({ x: standsLeft ? box.left - away : box.right + away, y: box.bottom });
  return { toPaper, mmPerPaperMm: 1 / (scale * 100), figureFoot, floor };
}
