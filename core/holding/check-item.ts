import type { Finding } from '../finding';
import type { CalculationLine } from './calculation';
import { countMagnets, rigidMagnets, room, type CountedMagnet } from './counted-magnet';
import { faultsOfItem } from './item-faults';
import type { HeldItem, ItemLoad } from './item';
import { itemLines } from './item-lines';
import { holdRigid, modeNames, type ModeName, type RigidState } from './rigid-item';
import { holdingCautions, lightDuty, safetyFactor, stackInFactor } from './safety';

export const verdicts = ['holds', 'holds only if tested', 'does not hold', 'cannot be judged'] as const;
export type Verdict = (typeof verdicts)[number];

export interface Mode {
  readonly name: ModeName;
  /** Capacity over demand with the pulls as designed, and with every tolerance against them. */
  readonly factor: number;
  readonly factorInWorstCase: number;
  /** Factor asked for over factor there is, in the worse of the two cases; above 1 it does not hold. */
  readonly utilisation: number;
}

export interface HoldingResult {
  readonly verdict: Verdict;
  /** How many times over it holds, in the mode that governs; undefined where nothing can be said. */
  readonly factor?: number;
  /** What the use asks for. */
  readonly asked: number;
  readonly governs?: ModeName;
  readonly modes: readonly Mode[];
  /** Largest safe weight of the payload, N; with the rest of the item as it is. */
  readonly largestWeight?: number;
  /** Why the verdict is not plain `holds`, each with what to do. */
  readonly reasons: readonly string[];
  /** What was taken for granted. */
  readonly assumptions: readonly string[];
  readonly lines: readonly CalculationLine[];
  readonly cautions: readonly Finding[];
  readonly magnets: readonly CountedMagnet[];
  /** As designed, and with every tolerance against it. */
  readonly state?: RigidState;
}

/**
 * Whether a rigid item holds on its magnets: its factor in each mode, its largest safe weight and a verdict with reasons and
 * assumptions. Never a plain `holds` outside what is known: magnets of which nothing can be said count as absent.
 *
 * Asked for is the safety factor of its use with pulls as designed, and that factor times what it allows for tolerances
 * (`stackInFactor`) with every tolerance of this place against it.
 */
export function checkItem(item: HeldItem): HoldingResult {
  const asked = safetyFactor(item.consequence);
  const faults = faultsOfItem(item);
  const base = { asked, modes: [], assumptions: [], lines: [], cautions: holdingCautions, magnets: [] };
  if (faults.length > 0) return { ...base, verdict: 'cannot be judged', reasons: faults };

  const magnets = countMagnets(item);
  const reasons = reasonsOf(item, magnets);
  const assumptions = assumptionsOf(item, magnets);
  const refused = unique(magnets.flatMap(({ pull }) => pull.refused));
  const isKnown = magnets.some(({ pull }) => pull.by !== 'nothing');
  if (!isKnown && refused.length > 0) {
    // Not a figure is known of an untested coating; a few sheets of paper are what such coatings are made for.
    const verdict = isLightDuty(item) && isOnCoating(item) ? 'holds only if tested' : 'cannot be judged';
    return { ...base, verdict, reasons, assumptions, magnets };
  }

  const state = holdRigid(item.loads, rigidMagnets(magnets, 'nominal'));
  const worst = holdRigid(item.loads, rigidMagnets(magnets, 'least'));
  const modes = modesOf(state, worst, asked);
  const governing = modes.reduce((a, b) => (b.utilisation > a.utilisation ? b : a));
  const largestWeight = largestPayload(item.loads, magnets, asked);
  const holdsAsDesigned = state.factor >= asked * (1 - 1e-9);
  const holdsAtWorst = worst.factor >= asked * stackInFactor * (1 - 1e-9);
  const barred = barredUse(item);
  const testWanted = unique(magnets.flatMap(testsWanted));
  const wantsTest = !holdsAtWorst || testWanted.length > 0 || isUntestedHurt(item, magnets);

  let verdict: Verdict;
  if (barred) verdict = 'does not hold';
  else if (!holdsAsDesigned) verdict = refused.length > 0 ? 'cannot be judged' : 'does not hold';
  else verdict = wantsTest ? 'holds only if tested' : 'holds';
  return {
    ...base,
    verdict,
    factor: state.factor,
    governs: governing.name,
    modes,
    ...(largestWeight === undefined ? {} : { largestWeight: barred ? 0 : largestWeight }),
    reasons: [
      ...(barred ? [barred] : []),
      ...(holdsAsDesigned && !holdsAtWorst
        ? [
            `With every tolerance against it, it holds ${show(worst.factor)} times over where ${show(asked * stackInFactor)} are asked for: test on site.`,
          ]
        : []),
      ...(holdsAsDesigned
        ? []
        : [
            `${words[governing.name]}: it holds ${show(state.factors[governing.name])} times over where ${asked} are asked for.`,
          ]),
      ...reasons,
    ],
    assumptions,
    lines: itemLines(item, magnets, state, worst, asked),
    magnets,
    state,
  };
}

export const words: Readonly<Record<ModeName, string>> = {
  slip: 'The item slips down',
  turning: 'The item turns on the wall, because its load is off the middle of its magnets',
  'pull-off': 'A magnet is pried off',
  tipping: 'The item tips off the wall as a whole',
};

function modesOf(state: RigidState, worst: RigidState, asked: number): Mode[] {
  return modeNames.flatMap((name) => {
    const factor = state.factors[name];
    const factorInWorstCase = worst.factors[name];
    if (factor === Infinity && factorInWorstCase === Infinity) return [];
    const utilisation = Math.max(asked / factor, (asked * stackInFactor) / factorInWorstCase);
    return [{ name, factor, factorInWorstCase, utilisation }];
  });
}

/** Largest payload that leaves both cases their factor; every mode only gets worse with it. */
function largestPayload(
  loads: readonly ItemLoad[],
  magnets: readonly CountedMagnet[],
  asked: number,
): number | undefined {
  const payload = loads.reduce(
    (sum, load) => sum + (load.payload ? Math.hypot(load.down, load.out, load.side) : 0),
    0,
  );
  if (!(payload > 0)) return undefined;
  const [nominal, least] = [rigidMagnets(magnets, 'nominal'), rigidMagnets(magnets, 'least')];
  const holds = (times: number) => {
    const scaled = loads.map((load) => (load.payload ? scaledBy(load, times) : load));
    return (
      holdRigid(scaled, nominal).factor >= asked && holdRigid(scaled, least).factor >= asked * stackInFactor
    );
  };
  let high = 1;
  while (holds(high) && high < 1e6) high *= 2;
  let low = 0;
  if (!holds(1e-9)) return 0;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low * payload;
}

function scaledBy(load: ItemLoad, times: number): ItemLoad {
  return { ...load, down: load.down * times, out: load.out * times, side: load.side * times };
}

function testsWanted({ pull, derating: { isNearNeighbour } }: CountedMagnet): string[] {
  if (pull.by === 'nothing') return [];
  return [
    ...pull.testWanted,
    ...(isNearNeighbour
      ? [
          'Magnets nearer than three diameters share the same steel; half of each is counted, and only a test tells.',
        ]
      : []),
  ];
}

function reasonsOf(item: HeldItem, magnets: readonly CountedMagnet[]): string[] {
  return unique([
    ...magnets.flatMap(({ pull }) => pull.refused),
    ...magnets.flatMap(testsWanted),
    ...(isUntestedHurt(item, magnets)
      ? ['Its fall could hurt: pull each kind of magnet off this wall before anyone relies on it.']
      : []),
    ...magnets.flatMap(({ pull }) => pull.notes),
    ...(magnets.some(({ derating: { isNearEdge } }) => isNearEdge)
      ? [
          'A magnet is nearer than 1.5 diameters to a panel’s edge, joint, hole or screw; half of its pull is counted, none over the edge.',
        ]
      : []),
  ]);
}

function assumptionsOf(item: HeldItem, magnets: readonly CountedMagnet[]): string[] {
  const { hottest } = item.temperatures ?? room;
  return unique([
    ...magnets.map(({ friction }) => `Friction ${friction.mu}: ${friction.words}.`),
    ...(magnets.some(({ place }) => place.clearance === undefined)
      ? ['No panel edge, joint, hole or screw within 1.5 diameters of the magnets.']
      : []),
    'Magnets lie flat on the wall; a wedge counts as its largest gap.',
    `At most ${hottest} °C at the wall.`,
  ]);
}

/** Where a fall could hurt, no model is enough. */
function isUntestedHurt({ consequence }: HeldItem, magnets: readonly CountedMagnet[]): boolean {
  const hurts = consequence === 'could-hurt' || consequence === 'above-people';
  return hurts && magnets.some(({ pull }) => pull.by === 'model' || pull.by === 'maker');
}

function barredUse(item: HeldItem): string | undefined {
  if (item.consequence !== 'above-people' || item.hasStop || isLightDuty(item)) return undefined;
  return 'Nothing heavy hangs over a bed, seat, walkway or play area on magnets alone: add a mechanical stop.';
}

function isLightDuty({ loads }: HeldItem): boolean {
  const weight = loads.reduce((sum, { down, out, side }) => sum + Math.hypot(down, out, side), 0);
  return weight <= lightDuty.weight && loads.every(({ reach }) => reach <= lightDuty.reach);
}

function isOnCoating({ magnets }: HeldItem): boolean {
  return magnets.length > 0 && magnets.every(({ ground }) => ground.kind === 'coating');
}

function unique(sentences: readonly string[]): string[] {
  return [...new Set(sentences)];
}

function show(value: number): string {
  return Number.isFinite(value) ? value.toFixed(value < 10 ? 2 : 0) : 'any number of';
}
