import { flattenVertices } from '../geometry/arc';
import { difference } from '../geometry/clip';
import type { Wall } from '../job/schema';
import { keepOutOf } from './keep-out';
import { movementJointOf } from './movement-joint';
import { rimBands } from './rim';
import { surveyFindings } from './survey-findings';
import type { SurveyedWall } from './surveyed-wall';

/**
 * The wall as panels see it: outline − rim − openings and fittings grown by their clearance − movement joints.
 *
 * Promised: `usable` lies within the outline, shares no area with a rim band, a grown keep-out or the strip of a
 * movement joint, and for
 * rectilinear walls usable + taken away = outline exactly. The outline is inscribed, keep-outs circumscribed.
 *
 * @param wall as `readJob` let it through: simple shapes, sizes above 0
 * @returns keep-outs in listed order, openings first; `usable` is [] where nothing of the wall is left, and a
 *   finding says so
 */
export function surveyWall(wall: Wall): SurveyedWall {
  const outline = flattenVertices(wall.outline, 'inscribed');
  const keepOuts = [
    ...wall.openings.map((opening) => keepOutOf('opening', opening)),
    ...wall.fittings.map((fitting) => keepOutOf('fitting', fitting)),
  ];
  const rim = rimBands(outline, wall.rim);
  const whole = { outer: outline.ring, holes: [] };
  const movementJoints = (wall.lines ?? [])
    .filter(({ kind }) => kind === 'movement-joint')
    .map(movementJointOf);
  const usable = difference(
    [whole],
    rim.map(({ band }) => band),
    keepOuts.map(({ grown }) => grown),
    movementJoints.map(({ strip }) => strip),
  );
  const findings = surveyFindings(wall, whole, keepOuts, usable);
  return { wall, outline, keepOuts, rim, movementJoints, usable, findings };
}
