import type { Mm } from '../units';
import { given, note, type CalculationLine } from './calculation';
import type { CoatingGround, HoldingGround, SteelGround } from './ground';
import { hardestPull } from './hardest-pull';
import { outsideLimits } from './limits';
import { blockShares, discFor, isSameMagnet, materialLimits, type Magnet } from './magnet';
import { pullLines } from './pull-lines';
import { gapMore, pullRange, situationOf, tolerances, type PullRange } from './pull-range';
import { calibrate, hasEnoughReadings, leastGap, measuredPull, type MeasuredPull } from './pull-test';
import type { PullSituation } from './limits';
import { isByArea, ratedBr, ratedPullHere } from './rated-pull';
import { usualStack } from './safety';

/** How hard one magnet pulls at one place, before what its neighbours and edges take from it. */
export interface PullAtPlace {
  /** N; 0 where nothing is known or nothing holds. */
  readonly nominal: number;
  readonly least: number;
  /** What it can pull on the panel at most, N. */
  readonly most: number;
  readonly by: 'site-test' | 'maker' | 'model' | 'nothing';
  /** Why nothing can be said; [] if something can. */
  readonly refused: readonly string[];
  /** What only a test on site can settle. */
  readonly testWanted: readonly string[];
  readonly notes: readonly string[];
  readonly lines: readonly CalculationLine[];
}

export interface Temperatures {
  /** °C at the wall. */
  readonly hottest: number;
  readonly coldest: number;
}

/**
 * The pull of a magnet on a ground: as measured with this magnet there, else as its maker measured it under no easier
 * conditions, else by the model at the gap that a test led to or that was given.
 *
 * @param between what lies between magnet and wall beside the magnet's own cover, mm
 */
export function pullAtPlace(
  magnet: Magnet,
  ground: HoldingGround,
  between: Mm,
  temperatures: Temperatures,
): PullAtPlace {
  if (ground.kind === 'none')
    return nothing(['Behind a magnet there is no steel or magnetic coating.'], false);
  if (ground.kind === 'unknown') return nothing([ground.why]);
  const unfit = outsideTemperatures(magnet, temperatures);
  if (unfit) return nothing([unfit]);
  const pull =
    ground.kind === 'coating'
      ? onCoating(magnet, ground, between)
      : onSteel(magnet, ground, between, temperatures);
  return warmed(pull, magnet, temperatures);
}

function onCoating(magnet: Magnet, ground: CoatingGround, between: Mm): PullAtPlace {
  const measured = measuredPull(ground.tests, magnet, between, true);
  if (!measured)
    return nothing([
      `How much iron a magnetic coating holds is not known: pull ${magnet.name} off this wall in three places and enter the readings.`,
    ]);
  if (measured.pull > hardestPull(magnet)) return nothing([tooHard('A pull test', magnet, measured.pull)]);
  return tested(measured, measured.pull * usualStack, measured.pull / usualStack);
}

function onSteel(magnet: Magnet, given: SteelGround, between: Mm, { hottest }: Temperatures): PullAtPlace {
  if (given.steel === 'austenitic-stainless')
    return nothing(['Austenitic stainless steel (304, 316) does not hold a magnet.'], false);
  const { gap, weak, refused } = calibrate(given);
  const weakForOthers = weak.some((test) => !isSameMagnet(test.magnet, magnet));
  const ground = gap === undefined ? given : measuredGround(given, gap);
  const stands = discFor(magnet);
  const situation = situationOf(stands ?? magnet, ground, between, hottest);
  const outside = outsideLimits(situation);
  const loose = tooLoose(situation.gap, ground);
  const isKnown = stands !== undefined && outside.length === 0 && ground.steel !== 'unknown';
  const range = isKnown ? rangeOf(magnet, situation, ground) : undefined;
  const share = range && !loose ? range.least / range.nominal : usualStack;

  const measured = measuredPull(given.tests, magnet, between, false);
  // A slip of the pen in a reading must not hold anything: no wall pulls harder than steel at the least gap.
  const hardest = hardestPull(magnet);
  const bare = range
    ? Math.min(hardest, rangeOf(magnet, { ...situation, gap: leastGap(magnet, between) }, ground).most)
    : hardest;
  if (measured && measured.pull <= bare) {
    const most = Math.max(range?.most ?? 0, measured.pull / usualStack);
    const pull = tested(measured, measured.pull * share, most);
    return { ...pull, notes: refused, testWanted: [...pull.testWanted, ...(weakForOthers ? [patchy] : [])] };
  }
  if (weak.length > 0) return nothing(refused);
  const disbelieved = measured && !range ? [tooHard('A pull test', magnet, measured.pull)] : [];
  const rated = ratedPullHere(magnet, situation);
  const isTrusted = rated !== undefined && ground.steel === 'low-carbon' && rated <= (range?.most ?? hardest);
  if (isTrusted) {
    const unrated = range && !loose ? undefined : gapUnrated(magnet, situation, ground);
    const isOverHollow = unrated !== undefined && gapMore(ground) > tolerances.gap + 1e-9;
    return byMaker(magnet, rated, isOverHollow ? 0 : rated * share, unrated);
  }
  if (!range)
    return nothing([
      ...disbelieved,
      ...(rated !== undefined && rated > hardest ? [tooHard('The maker’s pull', magnet, rated)] : []),
      ...outsideSentences(magnet, ground, outside),
    ]);

  const weaker = ratedBr(magnet);
  const counted =
    weaker !== undefined && weaker < magnet.Br
      ? situationOf({ ...(stands ?? magnet), Br: weaker }, ground, between, hottest)
      : situation;
  const final = counted === situation ? range : rangeOf(magnet, counted, ground);
  return {
    nominal: final.nominal,
    // Over the deepest hollow the pull is not known, so that none is counted there.
    least: loose ? 0 : final.least,
    most: final.most,
    by: 'model',
    refused: [],
    testWanted: [
      ...(magnet.shape === 'block'
        ? [
            `${magnet.name} is a block and is counted as ${blockShares.counted} of a disc of the same face, ${Number(situation.diameter.toPrecision(3))} mm across: only a test on site tells.`,
          ]
        : []),
      ...(ground.steel === 'ferritic-stainless'
        ? ['Ferritic stainless steel saturates lower, by about a quarter (from memory): only a test tells.']
        : []),
      ...(loose ? [loose] : []),
    ],
    notes: [
      ...refused,
      ...(counted === situation
        ? []
        : ['The maker’s pull shows a magnet weaker than its grade; it is counted so.']),
      ...(rated !== undefined
        ? ['The maker’s pull is more than the model can explain under these conditions, and is not used.']
        : magnet.rated && weaker === undefined
          ? ['The maker’s pull was measured under easier conditions than here, and is not used.']
          : []),
    ],
    lines: pullLines(stands ?? magnet, counted, ground, loose ? { ...final, least: 0 } : final),
  };
}

const patchy =
  'Another magnet’s pull test finds less on this wall than steel can give: test this one at its very place.';

function tooHard(what: string, magnet: Magnet, force: number): string {
  return `${what} gives ${Number(force.toPrecision(3))} N for ${magnet.name}, more than a face of its size can pull (${Number(hardestPull(magnet).toPrecision(3))} N): check it.`;
}

/** The range of a magnet, a block being counted as part of the disc that stands for it. */
function rangeOf({ shape }: Magnet, situation: PullSituation, ground: SteelGround): PullRange {
  const range = pullRange(situation, ground);
  if (shape !== 'block') return range;
  const { counted, most } = blockShares;
  return {
    ...range,
    nominal: range.nominal * counted,
    least: range.least * counted,
    most: range.most * most,
  };
}

/**
 * How the pull of a magnet that the model does not know falls with the gap is not known either: its maker's figure counts
 * plainly only where it was measured across the largest gap that there may be.
 */
function gapUnrated(magnet: Magnet, { gap }: PullSituation, ground: SteelGround): string | undefined {
  const most = gap + gapMore(ground);
  const rated = magnet.rated!.gap;
  if (rated >= most - 1e-9) return undefined;
  return `The maker’s pull of ${magnet.name} was measured across ${rated} mm, and the gap may be up to ${Number(most.toPrecision(3))} mm here: test on site.`;
}

/** In its worst case a gap may be a usual tolerance beyond the limits of the model; more than that only a test can settle. */
export function tooLoose(gap: Mm, ground: SteelGround): string | undefined {
  const most = gap + gapMore(ground);
  if (gap > 3 || most <= 3 + tolerances.gap + 1e-9) return undefined;
  return `Over a hollow the gap may be up to ${Number(most.toPrecision(3))} mm, and the pull is known to 3 mm: test at this very place.`;
}

/** What was measured in enough places is the gap there is; in fewer, the layers may still be thicker elsewhere. */
export function measuredGround({ gapLeast: _, gapMost, ...ground }: SteelGround, gap: Mm): SteelGround {
  const readings = ground.tests.reduce((sum, test) => sum + test.readings.length, 0);
  const isEnough = hasEnoughReadings({ readings });
  return { ...ground, gap, ...(isEnough || gapMost === undefined ? {} : { gapMost }) };
}

function outsideSentences(magnet: Magnet, ground: SteelGround, outside: readonly string[]): string[] {
  if (ground.steel === 'unknown')
    return ['The kind of steel is not known: name it, or test on site with this magnet.'];
  if (!discFor(magnet))
    return [
      magnet.shape === 'foil'
        ? 'The model does not know magnetic foil: enter its maker’s pull by area on a sheet no thicker and across a gap no smaller than here, or test on site.'
        : 'The model knows bare discs, and blocks up to twice as long as wide: enter the maker’s pull on a sheet no thicker and across a gap no smaller than here, or test on site.',
    ];
  return outside.map((sentence) => `${sentence} Test on site with this magnet.`);
}

export function outsideTemperatures(magnet: Magnet, { hottest, coldest }: Temperatures): string | undefined {
  const limits = materialLimits[magnet.material];
  const isThin = magnet.height / magnet.diameter < 0.25;
  const most = isThin ? limits.hottestThin : limits.hottest;
  if (!(hottest <= most)) return `${magnet.name} may lose its magnetism for good above ${most} °C.`;
  if (!(coldest >= limits.coldest))
    return `${magnet.name} may lose its magnetism for good below ${limits.coldest} °C.`;
  return undefined;
}

function tested({ pull, readings }: MeasuredPull, least: number, most: number): PullAtPlace {
  const measured = { pull, readings };
  return {
    nominal: pull,
    least,
    most,
    by: 'site-test',
    refused: [],
    testWanted: hasEnoughReadings(measured)
      ? []
      : ['The pull test has fewer than three readings: measure in three places.'],
    notes: [],
    lines: [
      {
        part: 'pull',
        symbol: 'F',
        words: `lowest of ${readings} readings on this wall`,
        value: pull,
        unit: 'N',
        source: 'pull test on site',
      },
      {
        part: 'tolerances',
        symbol: 'Fmin',
        words: 'pull elsewhere on the wall, every tolerance against it',
        value: least,
        unit: 'N',
        source: `${note}, section 3`,
      },
    ],
  };
}

function byMaker(magnet: Magnet, force: number, least: number, unrated: string | undefined): PullAtPlace {
  return {
    nominal: force,
    least,
    most: force / usualStack,
    by: 'maker',
    refused: [],
    testWanted: unrated === undefined ? [] : [unrated],
    notes: [],
    lines: [
      {
        part: 'pull',
        symbol: 'F',
        words: `maker’s pull of ${magnet.name}${isByArea(magnet) ? ' by its area' : ''} on ${magnet.rated!.thickness} mm steel across ${magnet.rated!.gap} mm, no easier than here`,
        value: force,
        unit: 'N',
        source: given,
      },
      {
        part: 'tolerances',
        symbol: 'Fmin',
        words: 'every tolerance against it',
        value: least,
        unit: 'N',
        source: `${note}, section 3`,
      },
    ],
  };
}

/** What was measured at room temperature, at the hottest; the model has counted it already. */
function warmed(pull: PullAtPlace, magnet: Magnet, { hottest }: Temperatures): PullAtPlace {
  if (pull.by !== 'site-test' && pull.by !== 'maker') return pull;
  if (hottest <= 20) return pull;
  // Squared, as an unsaturated sheet has it: never less of a loss than there is.
  const share = (1 - materialLimits[magnet.material].loss * (hottest - 20)) ** 2;
  const lines: readonly CalculationLine[] = [
    ...pull.lines,
    {
      part: 'pull',
      symbol: 'ϑ',
      words: `share left at ${hottest} °C`,
      value: share,
      unit: '',
      source: `${note}, section 3`,
    },
  ];
  return { ...pull, nominal: pull.nominal * share, least: pull.least * share, lines };
}

/** @param isUnknown false: it is known that nothing holds */
function nothing(said: readonly string[], isUnknown = true): PullAtPlace {
  return {
    nominal: 0,
    least: 0,
    most: 0,
    by: 'nothing',
    refused: isUnknown ? said : [],
    testWanted: [],
    notes: isUnknown ? [] : said,
    lines: [],
  };
}
