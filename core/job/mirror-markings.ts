import { tidy } from './changes';
import { extentOf } from './extent';
import type { Marking } from './marking-schema';
import { sizeOfMarking } from './markings';
import type { Zone } from './schema';

/*
 * Markings of zones that are mirrored or turned. Their places follow; what is read or looked at stays upright and is
 * never mirrored, and a grid or board changes its two directions for each other.
 */

/** @returns {} for a zone (or anything else) without markings */
export function mirroredMarkings(zone: Zone, axis: 'x' | 'y'): Pick<Zone, 'markings'> | object {
  if (!zone.markings) return {};
  const whole = extentOf(zone);
  const markings = zone.markings.map((marking) => {
    const { width, height } = sizeOfMarking(marking);
    return axis === 'x'
      ? { ...marking, x: tidy(whole.width - marking.x - width) }
      : { ...marking, y: tidy(whole.height - marking.y - height) };
  });
  return { markings };
}

/** By a quarter turn anticlockwise, about which point does not matter: places are counted from the zone's edges. */
export function turnedMarkings(zone: Zone): Pick<Zone, 'markings'> | object {
  if (!zone.markings) return {};
  const { height } = extentOf(zone);
  const markings = zone.markings.map((marking): Marking => {
    const own = sizeOfMarking(marking);
    const middle = { x: height - (marking.y + own.height / 2), y: marking.x + own.width / 2 };
    const turned = turnedKind(marking);
    const size = sizeOfMarking(turned);
    return { ...turned, x: tidy(middle.x - size.width / 2), y: tidy(middle.y - size.height / 2) };
  });
  return { markings };
}

function turnedKind(marking: Marking): Marking {
  const { kind, width, height, spacingAcross, spacingUp, across, up } = marking;
  if (kind === 'ruled-grid')
    return { ...marking, width: height, height: width, spacingAcross: spacingUp, spacingUp: spacingAcross };
  return kind === 'board' ? { ...marking, across: up, up: across } : marking;
}
