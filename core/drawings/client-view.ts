import { boxOf } from '../geometry/polygon';
import type { Job } from '../job/schema';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { clientFoot } from './client-foot';
import { clientHeader, clientMargin as margin, type PageNumber } from './client-header';
import { mapForClient } from './client-map';
import { zoneNotices } from './client-view-zones';
import type { LodeplanDocument, Page, PaperFormat, TextMeasure } from './page';
import { cornersOf, pageSize, type PaperBox } from './paper';
import { sceneOf } from './picture/scene';
import { finishedWall, type LookOptions } from './picture/wall-look';
import { noPictures, type Pictures } from './pictures';

/**
 * The picture for the client: a page a wall as it will look, with an adult and a child standing by for scale, no shop
 * dimensions and no panel lines; after it, if the job wants it, where a magnet holds. Walls without a zone have no page; without any there are no pages.
 */
export function clientView(
  worked: WorkedOut,
  measure: TextMeasure,
  pictures: Pictures = noPictures,
): LodeplanDocument {
  const walls = worked.walls.filter(({ zones }) => zoneNotices(zones.map(({ area }) => area)).length > 0);
  const drawn = walls.flatMap((wall): ((pageNumber: PageNumber) => Page)[] => [
    (pageNumber) => viewPage(wall, worked.job, pageNumber, measure, { pictures }),
    ...mapForClient(worked.job, wall, measure),
  ]);
  const pages = drawn.map((draw, i) => draw({ number: i + 1, of: drawn.length }));
  return { name: 'client-view', title: `${worked.job.name}: client view`, pages };
}

function viewPage(
  wall: WorkedWall,
  job: Job,
  pageNumber: PageNumber,
  measure: TextMeasure,
  options: LookOptions,
): Page {
  const { survey, zones } = wall;
  const box = boxOf(survey.outline.ring);
  const aspect = (box.right - box.left) / (box.top - box.bottom);
  const format: PaperFormat = aspect > 3.2 ? 'A3' : 'A4';
  const { width, height } = pageSize({ format, landscape: true });
  const notices = zoneNotices(
    zones.map(({ area }) => area),
    job.units,
  );
  const foot = clientFoot(wall, notices, job, pageNumber, width, measure);
  const room: PaperBox = {
    left: margin,
    right: width - margin,
    bottom: foot.top + 9,
    top: height - margin - (survey.wall.surveyed === false ? 28 : 24),
  };
  const { look, around, magnetLines, names } = sceneOf(wall, job, room, measure, options);
  return {
    format,
    landscape: true,
    items: [
      {
        kind: 'fill',
        rings: [cornersOf({ left: 0, bottom: 0, right: width, top: height })],
        colour: 'white',
      },
      ...clientHeader(survey.wall, job, width, height, measure),
      ...finishedWall(look),
      ...around,
      ...magnetLines,
      ...names,
      ...foot.items,
    ],
  };
}
