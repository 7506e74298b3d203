import { boxOf } from '../geometry/polygon';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { clientWallPicture } from './client-wall-picture';
import { zoneNotices } from './client-view-zones';
import type { FlowBlock } from './flow-table';
import type { TextMeasure } from './page';
import type { Pictures } from './pictures';
import { fitText } from './text';

const betweenColumns = 8;
/** Highest picture of a wall that stands alone, and of walls side by side. */
const highestAlone = 62;
const highestBeside = 44;
const caption = 6.5;

/** Pictures of all walls with zones, to one scale, in rows of one or two. */
export function pictureBlocks(
  walls: readonly WorkedWall[],
  width: Mm,
  units: LengthUnits | undefined,
  pictures: Pictures,
  measure: TextMeasure,
): FlowBlock[] {
  const shown = walls.filter(({ zones }) => zoneNotices(zones.map(({ area }) => area)).length > 0);
  if (shown.length === 0) return [];
  const columns = shown.length === 1 ? 1 : 2;
  const cell = (width - (columns - 1) * betweenColumns) / columns;
  const boxes = shown.map(({ survey }) => boxOf(survey.outline.ring));
  const scale = Math.min(
    ...boxes.map(({ left, right, bottom, top }) =>
      Math.min(cell / (right - left), (columns === 1 ? highestAlone : highestBeside) / (top - bottom)),
    ),
  );
  const rows = Array.from({ length: Math.ceil(shown.length / columns) }, (_, r) =>
    shown.slice(r * columns, (r + 1) * columns),
  );
  return rows.map((row) => {
    const heights = row.map(({ survey }) => {
      const { bottom, top } = boxOf(survey.outline.ring);
      return (top - bottom) * scale;
    });
    const high = Math.max(...heights);
    return {
      height: high + caption + 3,
      at: (left, top) =>
        row.flatMap((wall, i) => {
          const from = left + i * (cell + betweenColumns);
          // All stand on one line, as they do on the floor.
          const room = {
            left: from,
            right: from + cell,
            top: top - (high - heights[i]!),
            bottom: top - high,
          };
          const picture = clientWallPicture(wall, room, measure, { scale, units, marked: true, pictures });
          const { id, name } = wall.survey.wall;
          return [
            ...picture.items,
            fitText(
              {
                kind: 'text',
                text: name || `Wall ${id}`,
                at: { x: from, y: top - high - 4.6 },
                height: 2.5,
                weight: 'semi-bold',
                colour: 'ink',
              },
              cell,
              measure,
            ),
          ];
        }),
    };
  });
}
