/** `Delivery 1`; the walls without one go together as the last. */
export function deliveryText(delivery: string): string {
  return delivery ? `Delivery ${delivery}` : 'Last delivery';
}
