import { buildUpKind } from '../job/build-up-kinds';
import type { Marking, MarkingInk } from '../job/marking-schema';
import type { Zone } from '../job/schema';

/** The ink of a marking: its own, else light on chalk and dark on anything else. */
export function inkOf({ ink }: Marking, { buildUp }: Zone): MarkingInk {
  return ink ?? (buildUpKind(buildUp).surface === 'chalk' ? 'light' : 'dark');
}
