import { boxOf, type Box, type Ring } from '../../geometry/polygon';
import type { Job } from '../../job/schema';
import type { Mm } from '../../units';
import type { WorkedWall } from '../../worked-out';
import { zoneNotices, type ZoneNotice } from '../client-view-zones';
import type { OnPaper } from '../marking-items';
import type { Item, TextMeasure } from '../page';
import { cornersOf, type PaperBox } from '../paper';
import { figureHeight } from '../standing-figure';
import { magnetLines, nameZones } from './names';
import { peopleWidth, standingPeople } from './people';
import { wallLook, type LookOptions, type WallLook } from './wall-look';

/** A wall as it will look, with its floor and people beside it, in a room on paper. */
export interface Scene {
  readonly wall: WorkedWall;
  readonly notices: readonly ZoneNotice[];
  readonly onPaper: OnPaper;
  /** What the wall itself takes of the room. */
  readonly wallBox: PaperBox;
  readonly look: WallLook;
  /** Floor and people: the same, whatever of the wall is taken away. */
  readonly around: readonly Item[];
  /** Where magnets hold; only as long as the face is there. */
  readonly magnetLines: readonly Item[];
  readonly names: readonly Item[];
}

/** mm between the wall and whoever stands by. */
const away = 180;

export function sceneOf(
  wall: WorkedWall,
  job: Job,
  room: PaperBox,
  measure: TextMeasure,
  options: LookOptions = {},
): Scene {
  const { ring } = wall.survey.outline;
  const box = boxOf(ring);
  const { onPaper, peopleLeft, floor } = placeWall(ring, box, room);
  const notices = zoneNotices(
    wall.zones.map(({ area }) => area),
    job.units,
  );
  const look = wallLook(wall, job, onPaper, options);
  const [low, high] = [
    onPaper.toPaper({ x: box.left, y: box.bottom }),
    onPaper.toPaper({ x: box.right, y: box.top }),
  ];
  return {
    wall,
    notices,
    onPaper,
    wallBox: { left: low.x, bottom: low.y, right: high.x, top: high.y },
    look,
    around: [
      {
        kind: 'art',
        chains: [
          {
            points: cornersOf({ left: room.left, right: room.right, bottom: floor - 3, top: floor }),
            closed: true,
          },
        ],
        fill: '#e7e0d0',
        evenOdd: false,
        stroke: null,
        width: 0,
      },
      ...standingPeople({ x: peopleLeft, y: floor }, 1 / onPaper.perMm, 'hairline'),
      {
        kind: 'stroke',
        points: [
          { x: room.left, y: floor },
          { x: room.right, y: floor },
        ],
        width: 0.7,
        colour: 'ink',
      },
    ],
    magnetLines: magnetLines(wall, onPaper),
    names: nameZones(wall, notices, look.taken, onPaper, measure),
  };
}

/** A scene with the size of the picture it fills. */
export interface FreeScene extends Scene {
  readonly width: Mm;
  readonly height: Mm;
}

/** mm: so wide that words of 2.5 mm are read on a screen of usual width. */
const usualWidth = 300;
/** Of its width. */
const highest = 0.65;
const margin = 10;

/**
 * A scene on no page: as high as its wall asks for.
 *
 * @param options.width mm; the narrower, the larger are its words against the wall
 */
export function freeScene(
  wall: WorkedWall,
  job: Job,
  measure: TextMeasure,
  { width = usualWidth, ...options }: LookOptions & { readonly width?: Mm } = {},
): FreeScene {
  const { wide, high } = sizeOfScene(boxOf(wall.survey.outline.ring));
  const inner = width - 2 * margin;
  const height = Math.round(Math.min(highest * width, (inner * high) / wide + 2 * margin));
  const room: PaperBox = { left: margin, right: width - margin, bottom: margin, top: height - margin };
  return { ...sceneOf(wall, job, room, measure, options), width, height };
}

function sizeOfScene(box: Box) {
  return {
    wide: box.right - box.left + (peopleWidth + away) * 100,
    high: Math.max(box.top - box.bottom, (figureHeight + 100) * 100),
  };
}

/** The wall and the people beside it, together in the middle of the room, on one floor. */
function placeWall(ring: Ring, box: Box, room: PaperBox) {
  const { wide, high } = sizeOfScene(box);
  const scale = Math.min((room.right - room.left) / wide, (room.top - room.bottom) / high);
  // Whoever stands beside a stair wall stands at its foot.
  const footAt = (x: number) => Math.min(...ring.filter((point) => point.x === x).map(({ y }) => y));
  const standsLeft = footAt(box.right) > footAt(box.left);
  const beside = (peopleWidth + away) * 100;
  const left = (room.left + room.right - wide * scale) / 2 + (standsLeft ? beside * scale : 0);
  // A low wide wall sits a little under the middle of its room, so that the floor carries the picture.
  const floor = room.bottom + (room.top - room.bottom - high * scale) * 0.42;
  const toPaper: OnPaper['toPaper'] = ({ x, y }) => ({
    x: left + (x - box.left) * scale,
    y: floor + (y - box.bottom) * scale,
  });
  const peopleLeft = standsLeft
    ? left - beside * scale
    : toPaper({ x: box.right + away * 100, y: box.bottom }).x;
  return { onPaper: { toPaper, perMm: scale * 100 }, peopleLeft, floor };
}
