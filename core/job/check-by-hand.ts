import type { Finding } from '../finding';
import { pathText, refusal, shown, type Path } from './place';
import type { HandChoice, Job } from './schema';

/** Choices by hand have what their kind asks for, and ids of their own within the zone. */
export function checkByHand(job: Job): Finding[] {
  return job.walls.flatMap((wall, w) =>
    wall.zones.flatMap((zone, z) => {
      const first = new Map<string, Path>();
      return (zone.layout?.byHand ?? []).flatMap((choice, i): Finding[] => {
        const path: Path = ['walls', w, 'zones', z, 'layout', 'byHand', i];
        const earlier = first.get(choice.id);
        if (earlier) {
          const says = `is ${shown(choice.id)}, which ${pathText([...earlier, 'id'])} has already; give one of them another id.`;
          return [refusal(job, [...path, 'id'], 'duplicate-id', says)];
        }
        first.set(choice.id, path);
        const says = lackOf(choice);
        return says ? [refusal(job, path, 'by-hand-incomplete', says)] : [];
      });
    }),
  );
}

/** What a choice of a known kind lacks, in words; null if nothing. */
function lackOf(choice: HandChoice): string | null {
  const { kind, direction, at, with: other, stock, left, right, bottom, top } = choice;
  const is = `is ${shown(kind)}`;
  switch (kind) {
    case 'joint-on-line':
    case 'split':
      if (!at) return `${is} and has no "at"; give a point that it goes through.`;
      return direction ? null : `${is} and has no "direction"; give "upright" or "level".`;
    case 'other-stock':
      if (!at) return `${is} and has no "at"; give a point of the panel.`;
      return stock
        ? null
        : `${is} and has no "stock"; give the id of the stock sheet that the panel is cut from.`;
    case 'whole-panel':
    case 'no-panel':
      return at ? null : `${is} and has no "at"; give a point of the panel.`;
    case 'join':
      return at && other ? null : `${is}; give a point of either panel as "at" and "with".`;
    case 'no-joints': {
      const hasWidth = left !== undefined && right !== undefined;
      const hasHeight = bottom !== undefined && top !== undefined;
      const isHalf =
        (left !== undefined) !== (right !== undefined) || (bottom !== undefined) !== (top !== undefined);
      return !isHalf && (hasWidth || hasHeight)
        ? null
        : `${is}; give "left" and "right", or "bottom" and "top", or all four.`;
    }
    default:
      return null;
  }
}
