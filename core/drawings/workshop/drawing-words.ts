import type { Job } from '../../job/schema';

/** Which job and revision a drawing shows. */
export function whichRevision({ name, reference, revision, date }: Job): string {
  return [name, reference, revision && `revision ${revision}`, date].filter(Boolean).join(', ');
}

export function nameOfStock({ stock }: Job, id: string): string {
  return stock.find((one) => one.id === id)?.name ?? id;
}
