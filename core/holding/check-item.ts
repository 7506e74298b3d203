import type { Finding } from '../finding';
import type { CalculationLine } from './calculation';
import { rigidMagnets, room, type CountedMagnet } from './counted-magnet';
import type { HeldItem, ItemLoad } from './item';
import { itemLines } from './item-lines';
import { judgeItem, unique, type Judgement } from './judge-item';
import { holdRigid, type RigidMagnet } from './rigid-item';
import { holdingCautions, stackInFactor } from './safety';

/** A judgement with everything that a sheet prints of it. */
export interface HoldingResult extends Judgement {
  /** Largest safe weight of the payload, N, with the rest of the item as it is; undefined where nothing can be said. */
  readonly largestWeight?: number;
  /** What was taken for granted. */
  readonly assumptions: readonly string[];
  readonly lines: readonly CalculationLine[];
  readonly cautions: readonly Finding[];
}

/**
 * `judgeItem` with the largest safe weight, the assumptions and every line of the calculation.
 *
 * @param judgement of this very item, where it is known
 */
export function checkItem(item: HeldItem, judgement: Judgement = judgeItem(item)): HoldingResult {
  const { magnets, state, worst, asked, isBarred } = judgement;
  const assumptions = magnets.length > 0 ? assumptionsOf(item, magnets) : [];
  if (!state || !worst) return { ...judgement, assumptions, lines: [], cautions: holdingCautions };
  const largest = largestPayloads(item.loads, { magnets, asked });
  const largestWeight = largest && (isBarred ? 0 : Math.min(largest.asDesigned, largest.atWorst));
  return {
    ...judgement,
    ...(largestWeight === undefined ? {} : { largestWeight }),
    assumptions,
    lines: itemLines(item, magnets, state, worst, asked),
    cautions: holdingCautions,
  };
}

/** N; each the largest payload that leaves its case the factor asked for. */
export interface LargestPayloads {
  readonly asDesigned: number;
  /** With every tolerance against it, where less of a factor is asked for. */
  readonly atWorst: number;
}

/** Every mode only gets worse with more payload. Undefined where nothing of the loads is payload. */
export function largestPayloads(
  loads: readonly ItemLoad[],
  { magnets, asked }: Pick<Judgement, 'magnets' | 'asked'>,
): LargestPayloads | undefined {
  const payload = loads.reduce(
    (sum, load) => sum + (load.payload ? Math.hypot(load.down, load.out, load.side) : 0),
    0,
  );
  if (!(payload > 0)) return undefined;
  const largest = (which: 'nominal' | 'least', factor: number) =>
    payload * largestTimes(loads, rigidMagnets(magnets, which), factor);
  return {
    asDesigned: largest('nominal', asked),
    atWorst: largest('least', asked * stackInFactor),
  };
}

/** How many times the payload the magnets hold with a factor. */
function largestTimes(loads: readonly ItemLoad[], magnets: readonly RigidMagnet[], factor: number): number {
  const holds = (times: number) =>
    holdRigid(
      loads.map((load) => (load.payload ? scaledBy(load, times) : load)),
      magnets,
    ).factor >= factor;
  if (!holds(1e-9)) return 0;
  let high = 1;
  while (holds(high) && high < 1e6) high *= 2;
  let low = 0;
  // To six digits.
  for (let i = 0; i < 60 && high - low > 1e-6 * high; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function scaledBy(load: ItemLoad, times: number): ItemLoad {
  return { ...load, down: load.down * times, out: load.out * times, side: load.side * times };
}

function assumptionsOf(item: HeldItem, magnets: readonly CountedMagnet[]): string[] {
  const { hottest } = item.temperatures ?? room;
  return unique([
    ...magnets.map(({ friction }) => `Friction ${friction.mu}: ${friction.words}.`),
    ...(magnets.some(({ place }) => place.clearance === undefined)
      ? ['No panel edge, joint, hole or screw within 1.5 diameters of the magnets.']
      : []),
    'The item is stiff, and its lowest edge, or the lowest magnet’s rim, rests on the wall.',
    'Each magnet’s own fixing to the item bears its full pull.',
    'Magnets lie flat on the wall; a wedge counts as its largest gap.',
    `At most ${hottest} °C at the wall.`,
  ]);
}
