import type { ResolvedLayer } from '../build-up/resolve';
import type { Product } from '../job/product-schema';
import { minutesOf, type Settings } from './settings';
import { usualWaits } from './usual-rates';

/** How long a coat of a layer keeps what follows waiting; elapsed minutes. */
export interface Drying {
  /** Until the next coat, or whatever else, goes over it. */
  readonly next: number;
  /** Until it can be touched: masking comes off. */
  readonly touch: number;
  /** A coat that comes later than this no longer holds on it; undefined: any time. */
  readonly most: number | undefined;
  /** Until it has hardened through. */
  readonly cure: number;
}

/** What the product says, else what is usual for the layer; slowed where the room is cool or humid. A greatest wait is never drawn out. */
export function dryingOf({ layer, product }: ResolvedLayer, settings: Settings): Drying {
  const usual = usualWaits[layer.kind];
  const factor = isSlowed(product, settings) ? settings.slowing.factor : 1;
  const next = product?.recoatLeast ?? product?.touchDry ?? usual.next;
  const touch = product?.touchDry ?? Math.min(next, usual.next);
  const most = product?.recoatMost;
  return {
    next: minutesOf(next * factor),
    touch: minutesOf(touch * factor),
    most: most === undefined ? undefined : Math.floor(most * 60),
    cure: minutesOf(Math.max(next, product?.cure ?? usual.cure) * factor),
  };
}

/** Water leaves slowly where it is cool or humid; what hardens by reaction is slow where it is cool. */
export function isSlowed(product: Product | null, { climate, slowing }: Settings): boolean {
  const drying = product?.drying ?? 'none';
  if (drying === 'none') return false;
  const { temperature, surface = temperature, humidity } = climate;
  const isCool = [temperature, surface].some((degrees) => degrees !== undefined && degrees < slowing.below);
  const isHumid = humidity !== undefined && humidity > slowing.above;
  return isCool || (isHumid && drying === 'water-loss');
}
