import type { Mm } from '../units';
import { magnetsOnPanel } from './bond';
import { largestPayloads } from './check-item';
import { countMagnets } from './counted-magnet';
import { kilogramsOfNewtons, newtonsOfKilograms } from './force-units';
import type { HoldingGround } from './ground';
import { askedAbove } from './held-item';
import { hook } from './item';
import { judgeItem, unique, type Judgement, type Verdict } from './judge-item';
import type { Magnet } from './magnet';
import { bondOfPanel } from './panel-bond';
import type { PullAtPlace, Temperatures } from './pull-at-place';
import { heaviestLight, lightDuty, type Consequence } from './safety';
import type { Face } from './wall-faces';
import { gapReservation } from './zone-ground';

/** One magnet with a hook on it; nothing else is near. */
export interface HookQuestion {
  readonly magnet: Magnet;
  /** From the wall's face to where the weight hangs, mm. */
  readonly reach: Mm;
  readonly use: Consequence;
  readonly temperatures?: Temperatures;
  /** Nobody has said where people are under the wall, so that nothing heavy is judged. */
  readonly isPeopleUnknown?: boolean;
}

/** What may hang on a hook, magnet and hook included. */
export interface HookFigures {
  /** Of `weight`, or where that is 0 of `ifTested`: as such a hung item is judged. */
  readonly verdict: Verdict;
  /** Largest weight with its factor as designed and with every tolerance against it, kg; 0 where nothing may hang. */
  readonly weight: number;
  /** Largest weight with its factor as designed, kg, that its use is said of; beyond `weight` only a test on its place can allow it. */
  readonly ifTested: number;
  readonly reasons: readonly string[];
}

/** What a hook holds on a ground before the adhesive under the panel is asked. */
export interface HookOnGround {
  readonly pull: PullAtPlace;
  /** Of the pull, that is counted. */
  readonly share: number;
  /** How many times over it has to hold. */
  readonly asked: number;
  readonly figures: HookFigures;
  /** kg. */
  readonly atWorst: number;
  judge(weight: number): Judgement;
}

/** kg; light enough that a use which forbids heavy things does not forbid it, if it allows anything. */
const light = kilogramsOfNewtons(lightDuty.weight) * (1 - 1e-9);

/**
 * By the same calculation that judges hung items.
 *
 * @param clearance from the magnet's rim to whatever ends the ground, mm
 */
export function hookOnGround(question: HookQuestion, ground: HoldingGround, clearance: Mm): HookOnGround {
  const { magnet, reach, use, temperatures, isPeopleUnknown } = question;
  const itemOf = (weight: number) => ({
    ...hook(newtonsOfKilograms(weight), reach, { magnet, ground, clearance }, use),
    ...(temperatures && { temperatures }),
  });
  const judge = (weight: number) => judgeItem(itemOf(weight));
  const { pull, derating } = countMagnets(itemOf(light))[0]!;
  const ofLight = judge(light);
  const shared = { pull, share: derating.share, asked: ofLight.asked, judge };
  const holdsNothing = (verdict: Verdict, reasons: readonly string[]) => ({
    ...shared,
    atWorst: 0,
    figures: { verdict, weight: 0, ifTested: verdict === 'holds only if tested' ? light : 0, reasons },
  });
  if (!ofLight.state) return holdsNothing(ofLight.verdict, ofLight.reasons);
  if (pull.by === 'nothing') return holdsNothing('does not hold', pull.notes);
  if (ofLight.isBarred) return holdsNothing('does not hold', ofLight.reasons.slice(0, 1));

  const largest = largestPayloads(itemOf(light).loads, ofLight)!;
  const asDesigned = kilogramsOfNewtons(largest.asDesigned);
  const atWorst = kilogramsOfNewtons(largest.atWorst);
  const isAskedFirst = isPeopleUnknown === true && asDesigned > askedAbove;
  const ifTested = Math.min(
    asDesigned,
    use === 'above-people' ? light : use === 'light-at-reach' ? heaviestLight : Infinity,
    isAskedFirst ? askedAbove : Infinity,
  );
  const weight = Math.min(ifTested, atWorst);
  const { verdict, reasons } = judge(weight > 0 ? weight : ifTested);
  const figures = {
    verdict,
    weight,
    ifTested,
    reasons: isAskedFirst ? [...reasons, askFirst] : reasons,
  };
  return { ...shared, atWorst, figures };
}

const askFirst = `More than ${askedAbove} kg only once somebody has said where people lie, sit, play or pass under this wall, or that nobody does.`;

/** The same on a panel or coated area of the wall: no more than the panel's adhesive bears with nothing else on it. */
export function hookOnFace({ figures, atWorst, judge }: HookOnGround, face: Face): HookFigures {
  const gap = face.ground.kind === 'steel' ? gapReservation(face.zone) : undefined;
  const reasons = gap ? [...figures.reasons, gap] : figures.reasons;
  if (face.panel === undefined || figures.ifTested === 0) return { ...figures, reasons };

  const bondAt = (weight: number) =>
    bondOfPanel(face, newtonsOfKilograms(weight), magnetsOnPanel(judge(weight), [0]));
  const { result: bond, isPeelUnstated } = bondAt(figures.ifTested);
  const said = unique(
    bond.verdict === 'does not hold' ? [...bond.reasons, ...reasons] : [...reasons, ...bond.reasons],
  );
  if (bond.verdict !== 'does not hold' && isPeelUnstated)
    return { verdict: 'cannot be judged', weight: 0, ifTested: 0, reasons: said };
  if (bond.verdict !== 'does not hold') return { ...figures, reasons: said };

  let [low, high] = [0, figures.ifTested];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (bondAt(middle).result.verdict === 'does not hold') high = middle;
    else low = middle;
  }
  // Where the magnet alone peels the panel, no weight is small enough.
  if (low < figures.ifTested * 1e-6)
    return { verdict: 'does not hold', weight: 0, ifTested: 0, reasons: said };
  const weight = Math.min(low, atWorst);
  return { verdict: judge(weight > 0 ? weight : low).verdict, weight, ifTested: low, reasons: said };
}
