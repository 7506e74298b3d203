/** For whom a set may be bound. */
export const readers = ['fitter', 'client'] as const;
export type Reader = (typeof readers)[number];

/** What a client is given; everything else is for those who do the work. Some serve both. */
const forClient = /^(client-|offer$|care-sheet$|handover)/;
const forBoth = /^(markings-|programme$|holding-checks$|handover)/;

/** @param name of a document */
export function isFor(reader: Reader, name: string): boolean {
  return forBoth.test(name) || forClient.test(name) === (reader === 'client');
}
