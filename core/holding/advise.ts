import { applyTrial, rankOf, trialsOf, type Trials } from './trials';
import type { Advice, Candidate } from './advice';
import { adviseFixing } from './advise-fixing';
import { adviseMagnets } from './advise-magnets';
import { advisePlaces } from './advise-places';
import type { WallOfItems } from './held-item';
import { worseOf, type HungVerdict } from './judge-wall';
import type { Mode } from './judge-item';
import { whatToChange } from './what-to-change';

/** What helps by less than this is left out. */
const leastEffect = 1.01;

/**
 * What to change so that a hung item holds, or holds better: first what makes it hold, then screwing it where magnets alone
 * do not plainly hold it, then what helps but is not enough; each by how much it helps. An advice with a `change` leads, once that is
 * applied and the wall judged again, to exactly the verdict and factor it names. What would have another item hold worse is
 * not advised. [] for what has not been weighed, is screwed already, or is not on the wall.
 */
export function adviseHung(on: WallOfItems, id: string): Advice[] {
  const trials = trialsOf(on, id);
  if (!trials) return [];
  const { item, now } = trials;
  if (item.weight === undefined || now.verdict.isScrewed) return [];
  const own = now.placed.held
    ? [...adviseMagnets(trials), ...advisePlaces(trials)].flatMap((one) => judged(trials, one))
    : [];
  const all = [...own, ...elsewhere(trials)].sort(byEffect);
  if (now.verdict.verdict === 'holds' || all.some(({ verdict, change }) => verdict === 'holds' && change))
    return all;
  const enough = all.filter(({ verdict }) => rankOf[verdict] >= rankOf['holds only if tested']);
  return [...enough, screwed(on, trials), ...all.filter((one) => !enough.includes(one))];
}

function byEffect(a: Advice, b: Advice): number {
  return (
    rankOf[b.verdict] - rankOf[a.verdict] ||
    (b.effect === a.effect ? (b.factor ?? 0) - (a.factor ?? 0) : b.effect - a.effect)
  );
}

function judged(trials: Trials, { kind, words, also, patch, magnet }: Candidate): Advice[] {
  const { on, item, now } = trials;
  const after = trials.onWall({ patch, ...(magnet && { magnet }) });
  if (!after) return [];
  const effect = effectOf(now.verdict, after);
  if (!isHelp(now.verdict, after, effect)) return [];
  return [
    {
      kind,
      words,
      ...(also && { also }),
      verdict: after.verdict,
      isScrewed: false,
      ...figuresOf(after),
      effect,
      change: (job) => applyTrial(job, on.wall.id, item.id, { patch, ...(magnet && { magnet }) }),
    },
  ];
}

function elsewhere({ now }: Trials): Advice[] {
  const { held } = now.placed;
  if (!held) return [];
  return whatToChange(held, now.judgement).flatMap(({ kind, words, at, judgement }) => {
    const after = {
      verdict: worseOf(judgement.verdict, now.bonds),
      ...(judgement.factor !== undefined && { factor: judgement.factor, asked: judgement.asked }),
      utilisation: worstOf(judgement.modes),
    };
    const effect = effectOf(now.verdict, after);
    if (!isHelp(now.verdict, after, effect)) return [];
    return [
      {
        kind,
        words,
        verdict: after.verdict,
        isScrewed: false,
        ...figuresOf(after),
        effect,
        ...(at && { at }),
      },
    ];
  });
}

function screwed({ wall }: WallOfItems, { item }: Trials): Advice {
  const { words, also, change } = adviseFixing(wall, item);
  return {
    kind: 'fixing-point',
    words,
    also,
    verdict: 'cannot be judged',
    isScrewed: true,
    effect: Infinity,
    change,
  };
}

type After = Pick<HungVerdict, 'verdict' | 'factor' | 'asked' | 'utilisation'>;

function figuresOf({ factor, asked }: After): Pick<Advice, 'factor' | 'asked'> {
  return factor === undefined || asked === undefined ? {} : { factor, asked };
}

/** It helps if the verdict is better, or no worse and less is used up; what nobody could then judge is no help. */
function isHelp(before: After, after: After, effect: number): boolean {
  if (after.verdict === 'cannot be judged') return false;
  const by = rankOf[after.verdict] - rankOf[before.verdict];
  // A no without a figure is one that nothing measured could lift: another no is no help.
  if (by === 0 && before.verdict === 'does not hold' && before.factor === undefined) return false;
  return by > 0 || (by === 0 && effect > leastEffect && after.factor !== undefined);
}

function effectOf(before: After, after: After): number {
  const [was, is] = [before.utilisation ?? Infinity, after.utilisation ?? Infinity];
  if (!Number.isFinite(is)) return 0;
  return Number.isFinite(was) ? was / Math.max(is, 1e-12) : Infinity;
}

function worstOf(modes: readonly Mode[]): number {
  return Math.max(...modes.map(({ utilisation }) => utilisation));
}
