import { atMostOnCoating } from './coating-bound';
import { countMagnets, rigidMagnets, type CountedMagnet, type PullFinder } from './counted-magnet';
import { faultsOfItem } from './item-faults';
import type { HeldItem } from './item';
import { holdRigid, modeNames, type ModeName, type RigidState } from './rigid-item';
import { lightDuty, safetyFactor, stackInFactor } from './safety';

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

/** A verdict and what it rests on. */
export interface Judgement {
  readonly verdict: Verdict;
  /** How many times over it holds as designed, in its weakest mode; undefined where nothing can be said. */
  readonly factor?: number;
  /** What the use asks for. */
  readonly asked: number;
  /** The mode of the largest utilisation. */
  readonly governs?: ModeName;
  readonly modes: readonly Mode[];
  /** Why the verdict is not plain `holds`, each with what to do. */
  readonly reasons: readonly string[];
  readonly magnets: readonly CountedMagnet[];
  /** As designed, and with every tolerance against it. */
  readonly state?: RigidState;
  readonly worst?: RigidState;
  /** The use forbids it, whatever it holds. */
  readonly isBarred: boolean;
}

/**
 * Whether a rigid item holds on its magnets. Never a plain `holds` outside what is known: magnets of which nothing can be said
 * count as absent.
 *
 * Asked for is the safety factor of its use with pulls as designed, and that factor times what it allows for tolerances
 * (`stackInFactor`) with every tolerance of this place against it.
 *
 * @param pullOf absent: `pullAtPlace`
 */
export function judgeItem(item: HeldItem, pullOf?: PullFinder): Judgement {
  const asked = safetyFactor(item.consequence);
  const faults = faultsOfItem(item);
  const unknown = { asked, modes: [], isBarred: false };
  if (faults.length > 0) return { ...unknown, verdict: 'cannot be judged', reasons: faults, magnets: [] };

  const magnets = countMagnets(item, pullOf);
  const reasons = reasonsOf(item, magnets);
  const refused = magnets.flatMap(({ pull }) => pull.refused);
  const isKnown = magnets.some(({ pull }) => pull.by !== 'nothing');
  if (!isKnown && refused.length > 0) {
    const most = isLight(item) ? undefined : atMostOnCoating(item, magnets);
    if (most && most.factor < asked * (1 - 1e-9))
      return { ...unknown, verdict: 'does not hold', reasons: [beyondAnyCoating(most, asked)], magnets };
    // Not a figure is known of an untested coating; a few sheets of paper are what such coatings are made for.
    const verdict = isLightDuty(item) && isOnCoating(item) ? 'holds only if tested' : 'cannot be judged';
    return { ...unknown, verdict, reasons, magnets };
  }

  const state = holdRigid(item.loads, rigidMagnets(magnets, 'nominal'));
  const worst = holdRigid(item.loads, rigidMagnets(magnets, 'least'));
  const modes = modesOf(state, worst, asked);
  const holdsAsDesigned = state.factor >= asked * (1 - 1e-9);
  const holdsAtWorst = worst.factor >= asked * stackInFactor * (1 - 1e-9);
  const barred = barredUse(item);
  const { doubts = [] } = item;
  const wantsTest =
    !holdsAtWorst ||
    doubts.length > 0 ||
    magnets.flatMap(testsWanted).length > 0 ||
    isUntestedHurt(item, magnets);

  let verdict: Verdict;
  if (barred) verdict = 'does not hold';
  else if (!holdsAsDesigned) verdict = refused.length > 0 ? 'cannot be judged' : 'does not hold';
  else verdict = wantsTest && !isProven(item, asked) ? 'holds only if tested' : 'holds';
  const said = [
    ...(barred ? [barred] : []),
    ...(holdsAsDesigned ? [] : [weakestWords(modes, asked, magnets)]),
    ...(holdsAsDesigned && !holdsAtWorst
      ? [
          `With every tolerance against it, it holds ${show(worst.factor)} times over where ${show(asked * stackInFactor)} are asked for: test on site.`,
        ]
      : []),
    ...reasons,
  ];
  return {
    verdict,
    asked,
    factor: state.factor,
    governs: modes.reduce((a, b) => (b.utilisation > a.utilisation ? b : a)).name,
    modes,
    reasons: said,
    magnets,
    state,
    worst,
    isBarred: barred !== undefined,
  };
}

const words: Readonly<Record<ModeName, string>> = {
  slip: 'The item slips down',
  turning: 'The item turns on the wall, because its load is off the middle of its magnets',
  'pull-off': 'A magnet is pried off',
  tipping: 'The item tips off the wall as a whole',
};

function weakestWords(modes: readonly Mode[], asked: number, magnets: readonly CountedMagnet[]): string {
  if (magnets.every(({ pull, derating: { share } }) => pull.nominal * share === 0))
    return 'Nothing holds it: none of its magnets lies wholly on steel or on a magnetic coating.';
  const { name, factor } = modes.reduce((a, b) => (b.factor < a.factor ? b : a));
  return `${words[name]}: it holds ${show(factor)} times over where ${asked} are asked for.`;
}

function beyondAnyCoating({ factors, factor }: RigidState, asked: number): string {
  const name = modeNames.reduce((a, b) => (factors[b] < factors[a] ? b : a));
  return `${words[name]}: even if the coating pulled as hard as thick iron, it would hold ${show(factor)} times over where ${asked} are asked for.`;
}

function modesOf(state: RigidState, worst: RigidState, asked: number): Mode[] {
  return modeNames.flatMap((name) => {
    const factor = state.factors[name];
    const factorInWorstCase = worst.factors[name];
    if (factor === Infinity && factorInWorstCase === Infinity) return [];
    const utilisation = Math.max(asked / factor, (asked * stackInFactor) / factorInWorstCase);
    return [{ name, factor, factorInWorstCase, utilisation }];
  });
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
    ...(item.doubts ?? []),
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

/** Whether the item bore as much on its place as is asked of it. Proof lifts a doubt; it never lifts a no. */
function isProven({ loads, proofLoad = 0 }: HeldItem, asked: number): boolean {
  const hangs = loads.every(({ side, out }) => side === 0 && out === 0);
  const weight = loads.reduce((sum, { down }) => sum + down, 0);
  return hangs && proofLoad >= asked * weight;
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

function isLightDuty(item: HeldItem): boolean {
  return isLight(item) && item.loads.every(({ reach }) => reach <= lightDuty.reach);
}

/** What is light is left to a test. */
function isLight({ loads }: HeldItem): boolean {
  return loads.reduce((sum, { down, out, side }) => sum + Math.hypot(down, out, side), 0) <= lightDuty.weight;
}

function isOnCoating({ magnets }: HeldItem): boolean {
  return magnets.length > 0 && magnets.every(({ ground }) => ground.kind === 'coating');
}

export function unique(sentences: readonly string[]): string[] {
  return [...new Set(sentences)];
}

function show(value: number): string {
  return Number.isFinite(value) ? value.toFixed(value < 10 ? 2 : 0) : 'any number of';
}
