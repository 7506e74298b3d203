import type { Polygon, Ring } from '../geometry/polygon';
import { fromLowestLeft } from './blocks';

/** A panel of an issued revision: its mark and the shape that the mark belongs to; wall frame, hundredths. */
export interface IssuedMark {
  readonly mark: string;
  readonly outline: Polygon;
}

/**
 * Marks `${wallId}-${zoneId}-NN` for panels that stand in the order in which a fitter reads a wall. Numbers have
 * two digits, three from a hundred panels on, and so forth.
 *
 * Before a revision is issued the number is the place in that order. Afterwards a panel of the same outline keeps
 * its mark, and the others get the numbers above every issued one: a number that was ever on a drawing is not
 * given to another piece of steel.
 */
export function markPanels(
  wallId: string,
  zoneId: string,
  panels: readonly Polygon[],
  issued: readonly IssuedMark[] = [],
): string[] {
  const prefix = `${wallId}-${zoneId}-`;
  const kept = new Map(issued.map(({ mark, outline }) => [shapeKey(outline), mark]));
  const highest = issued.reduce((most, { mark }) => Math.max(most, numberOf(mark, prefix)), 0);
  const marks = panels.map((panel) => kept.get(shapeKey(panel)));
  const digits = Math.max(2, String(highest + marks.filter((mark) => mark === undefined).length).length);
  let number = highest;
  return marks.map((mark) => mark ?? prefix + String(++number).padStart(digits, '0'));
}

/** The number of a mark; 0 where it is not one of this zone's. */
function numberOf(mark: string, prefix: string): number {
  const number = mark.startsWith(prefix) ? Number(mark.slice(prefix.length)) : 0;
  return Number.isInteger(number) ? number : 0;
}

/** Equal for equal shapes, whatever corner and in whatever direction their rings begin. */
function shapeKey({ outer, holes }: Polygon): string {
  return [ringKey(outer), ...holes.map(ringKey).sort()].join('|');
}

function ringKey(ring: Ring): string {
  const forward = fromLowestLeft(ring);
  // From the same corner the other way round: the smaller text stands for both.
  const backward = [forward[0]!, ...forward.slice(1).reverse()];
  const text = (points: Ring) => points.map(({ x, y }) => `${x},${y}`).join(' ');
  const [one, other] = [text(forward), text(backward)];
  return one < other ? one : other;
}
