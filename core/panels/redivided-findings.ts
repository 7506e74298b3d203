import type { Finding } from '../finding';
import { toMm } from '../units';
import type { Panel } from './panel';
import type { JointChange } from './redivide';

/** What was done about slivers, in words; courses are counted from the zone's foot. */
export function redividedFindings(
  wallId: string,
  zoneId: string,
  panels: readonly Panel[],
  changes: readonly JointChange[],
): Finding[] {
  const lowest = panels.reduce((least, { course }) => Math.min(least, course), Infinity);
  return changes.map(({ axis, kind, courses, was, is }): Finding => {
    const [first, last] = [courses[0] - lowest + 1, courses[1] - lowest + 1];
    const courseWords =
      first === last
        ? `Course ${first} of zone ${zoneId} has`
        : `Courses ${first} ${last === first + 1 ? 'and' : 'to'} ${last} of zone ${zoneId} have`;
    const [wide, narrow] = [Math.max(...was), Math.min(...was)].map(toMm);
    const measured = axis === 'x' ? 'wide' : 'high';
    const panelWords =
      kind === 'joined'
        ? `one panel ${toMm(Math.max(...is))} mm ${measured}`
        : is.length === 2 && is[0] === is[1]
          ? `two panels ${toMm(is[0]!)} mm ${measured}`
          : `panels ${is.map(toMm).join(' and ')} mm ${measured}`;
    return {
      level: 'note',
      code: 'sliver-avoided',
      wall: wallId,
      object: zoneId,
      text: `${courseWords} ${panelWords} instead of ${wide} and ${narrow} mm, which would have left a sliver.`,
    };
  });
}
