import { locate } from '../../../core/geometry/polygon';
import type { StockSheet, Zone } from '../../../core/job/schema';
import { handWishes } from '../../../core/panels/by-hand/hand-wishes';
import { pointWithin } from '../../../core/panels/by-hand/neighbours';
import { isAlike } from '../../../core/panels/laid-piece';
import type { Panel } from '../../../core/panels/panel';
import { letGoOfHandChoice, putInHandChoice, setHandChoice } from '../../job/changes/by-hand';
import type { Hand } from '../hand.svelte';

/** Stock sheets of the same steel as a panel's, that it may be cut from instead. */
export function otherStock(hand: Hand, panel: Panel): readonly StockSheet[] {
  const { stock } = hand.open.job;
  const own = stock.find(({ id }) => id === panel.stock);
  return own ? stock.filter((sheet) => sheet !== own && isAlike(sheet, own)) : [];
}

/** A panel cut from another stock sheet; from the zone's own again, the choice is let go. */
export function cutFrom(hand: Hand, panel: Panel, zone: Zone, stock: string): void {
  const { wall } = hand;
  if (!wall) return;
  const before = choiceAt(hand, panel, zone);
  if (!before) {
    const { x, y } = pointWithin(panel.outline);
    hand.make(putInHandChoice(wall.id, zone, { kind: 'other-stock', at: { x: x / 100, y: y / 100 }, stock }));
  } else if (stock === zone.layout?.stock) hand.make(letGoOfHandChoice(wall.id, zone.id, before));
  else hand.make(setHandChoice(wall.id, zone.id, before, { stock }));
}

/** The choice that a panel has its stock sheet from. */
function choiceAt({ wall, worked }: Hand, { outline }: Panel, zone: Zone) {
  const area = worked?.zones.find((one) => one.area.zone.id === zone.id)?.area;
  const wish =
    wall &&
    area &&
    handWishes(wall, { ...area, zone }).find(
      (one) => one.kind === 'other-stock' && locate(one.at, outline) === 'inside',
    );
  return zone.layout?.byHand?.find(({ id }) => id === wish?.id);
}
