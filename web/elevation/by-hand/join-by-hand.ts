import type { MmPoint } from '../../../core/job/shape';
import { joinPieces } from '../../../core/panels/by-hand/change-by-hand';
import { neighboursOf, pointWithin, type PanelSide } from '../../../core/panels/by-hand/neighbours';
import { boxOf } from '../../../core/geometry/polygon';
import type { LaidPiece } from '../../../core/panels/laid-piece';
import type { Panel } from '../../../core/panels/panel';
import { toHundredth } from '../../../core/units';
import { putInHandChoice } from '../../job/changes/by-hand';
import type { Hand } from '../hand.svelte';
import { zoneOfPanel } from './set-by-hand';

/**
 * Two panels of one zone made one. What refuses it is said in a sentence, and nothing is changed.
 *
 * @param points of either panel; a point well within each if not given
 */
export function joinByHand(
  hand: Hand,
  one: Panel,
  other: Panel,
  points?: readonly [MmPoint, MmPoint],
): boolean {
  const zone = zoneOfPanel(hand, one);
  const area = hand.worked?.zones.find((worked) => worked.area.zone.id === zone?.id)?.area;
  if (!hand.wall || !zone?.layout || !area) return false;
  if (zoneOfPanel(hand, other) !== zone) {
    return refuse(hand, `Panels ${one.mark} and ${other.mark} are of two zones; join panels of one.`);
  }
  const [a, b] = [pieceOf(hand, one), pieceOf(hand, other)];
  const joined = a && b && joinPieces(a, b, area.area, toHundredth(zone.layout.jointGap));
  if (!joined || 'why' in joined) {
    const why = joined?.why ?? 'their stock sheet is gone';
    return refuse(hand, `Panels ${one.mark} and ${other.mark} cannot be joined: ${why}.`);
  }
  const [at, beside] = points ?? [within(one), within(other)];
  return hand.make(putInHandChoice(hand.wall.id, zone, { kind: 'join', at, with: beside }));
}

/** What lies beside a panel, side by side. */
export function besidePanel(hand: Hand, panel: Panel): Readonly<Partial<Record<PanelSide, Panel>>> {
  const gap = toHundredth(zoneOfPanel(hand, panel)?.layout?.jointGap ?? 0);
  const worked = hand.worked?.zones.find(({ layout }) => layout?.panels.includes(panel));
  return neighboursOf(worked?.layout?.panels ?? [], panel, gap);
}

function refuse(hand: Hand, sentence: string): false {
  hand.open.refused = sentence;
  hand.said = sentence;
  return false;
}

function within({ outline }: Panel): MmPoint {
  const { x, y } = pointWithin(outline);
  return { x: x / 100, y: y / 100 };
}

function pieceOf(hand: Hand, { outline, stock: id, course }: Panel): LaidPiece | null {
  const stock = hand.open.job.stock.find((sheet) => sheet.id === id);
  return stock ? { polygon: outline, cell: boxOf(outline.outer), course, stock } : null;
}
