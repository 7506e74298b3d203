import type { Finding } from '../finding';
import { toHundredth, toMm } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import { nearJointsAmong, type JointClearance, type NearJoint } from './joint-clearance';
import type { Panel } from './panel';
import { jointRuns, seamsOf } from './seams';

interface LaidJoints {
  readonly wallId: string;
  readonly area: ZoneArea;
  readonly panels: readonly Panel[];
  /** Undefined where joints may run anywhere. */
  readonly clearance: JointClearance | undefined;
}

/** The joints of a layout that come too near to a corner of an opening or to a board joint, and how to mend it. */
export function nearJointFindings({ wallId, area: { zone }, panels, clearance }: LaidJoints): Finding[] {
  if (!clearance) return [];
  const { start, jointGap } = zone.layout!;
  const runs = jointRuns(
    seamsOf(
      panels.map(({ outline }) => outline),
      toHundredth(jointGap),
    ),
  );
  return nearJointsAmong(runs, clearance).map((near): Finding => {
    const asked = toMm(near.kind === 'corner' ? clearance.corners : clearance.boardJoints);
    const mend =
      start === 'best'
        ? `no start keeps all joints away without more slivers, so move the zone's edge or allow a smaller distance`
        : `move the start by ${toMm(Math.ceil(toHundredth(asked) - near.distance))} mm or more, or let the best start be found`;
    return {
      level: 'warning',
      code: near.kind === 'corner' ? 'joint-near-corner' : 'joint-near-board-joint',
      wall: wallId,
      object: near.kind === 'corner' ? near.corner.opening : zone.id,
      text:
        `${jointInWords(near)} of zone ${zone.id} ${placeInWords(near)} ${toMm(Math.round(near.distance))} mm, ` +
        `less than ${asked} mm, where the wall cracks: ${mend}.`,
    };
  });
}

function jointInWords({ seam }: NearJoint): string {
  return seam.axis === 'x'
    ? `The upright joint ${toMm(seam.at)} mm from the left`
    : `The level joint ${toMm(seam.at)} mm from the floor`;
}

function placeInWords(near: NearJoint): string {
  if (near.kind === 'board-joint') return `runs beside board joint ${near.joint.id} at`;
  const { opening, kind, x, y } = near.corner;
  const word = kind === 'free' ? 'opening' : kind;
  return `passes the corner of ${word} ${opening} at (${toMm(x)}, ${toMm(y)}) by`;
}
