import type { LengthUnits } from '../../core/lengths';

/*
 * The unit that the screen shows and reads lengths in: the open job's. Everything that writes or reads a length asks
 * here, so that a table need not be told; `main.ts` says whose it is, once.
 */

let source: () => LengthUnits = () => 'mm';

export function shownUnits(): LengthUnits {
  return source();
}

export function followUnits(of: () => LengthUnits): void {
  source = of;
}
