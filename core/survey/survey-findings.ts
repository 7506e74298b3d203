import type { Finding } from '../finding';
import { difference } from '../geometry/clip';
import { boxContains, boxOf, isBox, perimeter, regionArea, type Polygon } from '../geometry/polygon';
import { kindInWords, sentence } from '../job/names';
import type { Fitting, Opening, Wall } from '../job/schema';
import { measureFindings } from './check-measures';
import { concealedFindings } from './concealed-lines';
import { groundFindings } from './ground-findings';
import type { KeepOut, SurveyedWall } from './surveyed-wall';

/** Check measures that the drawing misses, fixing points at cables, objects that are off the wall, and a wall of which nothing is left. */
export function surveyFindings(
  wall: Wall,
  whole: Polygon,
  keepOuts: readonly KeepOut[],
  usable: SurveyedWall['usable'],
): Finding[] {
  const findings = [...measureFindings(wall), ...groundFindings(wall), ...concealedFindings(wall)];
  const placed: readonly (Opening | Fitting)[] = [...wall.openings, ...wall.fittings];
  keepOuts.forEach((keepOut, i) => {
    const finding = offTheWall(wall, whole, keepOut, placed[i]!);
    if (finding) findings.push(finding);
  });
  if (usable.length === 0) {
    findings.push({
      level: 'warning',
      code: 'wall-not-usable',
      wall: wall.id,
      text:
        `Openings, fittings, their clearances and the rim take all of ${wallName(wall)}; ` +
        'make a clearance smaller or mend a size that was typed wrong.',
    });
  }
  return findings;
}

function offTheWall(
  wall: Wall,
  whole: Polygon,
  keepOut: KeepOut,
  placed: Opening | Fitting,
): Finding | undefined {
  const shape = { outer: keepOut.bare.ring, holes: [] };
  if (isBox(whole) && boxContains(boxOf(whole.outer), boxOf(shape.outer))) return undefined;
  const off = regionArea(difference([shape], [whole]));
  if (off <= negligibleArea(shape)) return undefined;
  const wholly = regionArea([shape]) - off <= negligibleArea(shape);
  return {
    level: 'warning',
    code: `${keepOut.kind}-outside-wall`,
    wall: wall.id,
    object: keepOut.id,
    text: wholly
      ? `${objectName(placed)} lies outside ${wallName(wall)}; move it onto the wall or delete it.`
      : `${objectName(placed)} reaches beyond the edge of ${wallName(wall)}; move it or make it smaller, ` +
        'or mend the outline of the wall.',
  };
}

/**
 * What of a shape may lie on the wrong side of an edge without being worth a word, hundredths squared: arcs of
 * both are drawn within two hundredths of the true ones, and a square millimetre is for corners.
 */
export function negligibleArea(shape: Polygon): number {
  return 1e4 + 4 * perimeter(shape);
}

export function wallName({ id, name }: Wall): string {
  return name ? `wall ${id} (${name})` : `wall ${id}`;
}

/** `Socket K1 (by the door)`: how a finding names an opening or fitting at the start of a sentence. */
export function objectName({ kind, id, name }: Opening | Fitting): string {
  const what = kind === 'free' ? 'Object' : sentence(kindInWords(kind, 'fitting'));
  return name ? `${what} ${id} (${name})` : `${what} ${id}`;
}
