import type { StationName } from '../job/open-job.svelte';

export interface Station {
  readonly name: StationName;
  readonly label: string;
  /** Its place on the route and the digit that, with Alt, goes there. */
  readonly number: number;
}

/** The route of the work, in its order. */
export const stations: readonly Station[] = [
  { name: 'survey', label: 'Survey', number: 1 },
  { name: 'zones', label: 'Zones', number: 2 },
  { name: 'panels', label: 'Panels', number: 3 },
  { name: 'hanging', label: 'Hanging', number: 4 },
  { name: 'price', label: 'Price', number: 5 },
  { name: 'drawings', label: 'Drawings', number: 6 },
];
