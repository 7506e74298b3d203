import type { CuttingTask } from '../plan';

/**
 * What a stock sheet or rack piece adds to a plan, as one whole number: money before bought stock sheets before
 * rack pieces, so that of two plans the one charged less is the better by cost, number and rack, in this order.
 *
 * @returns charge by stock format and rack piece; `rack` is -1 for a bought stock sheet
 */
export function chargesOf({ panels, stock, rack }: CuttingTask): (stock: number, rack: number) => number {
  // One more bought stock sheet outweighs every rack piece, the smallest coin every bought stock sheet.
  const sheet = Math.min(rack.length, panels.length) + 1;
  const coin = sheet * (panels.length + 1);
  return (format, piece) =>
    piece < 0 ? stock[format]!.price * coin + sheet : (rack[piece]!.value ?? 0) * coin + 1;
}
