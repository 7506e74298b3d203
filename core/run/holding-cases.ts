import * as v from 'valibot';
import { pullOf } from '../holding/pull-range';
import { outsideLimits, type PullSituation } from '../holding/limits';
import { findJsonFault } from '../job/json-fault';

/** A pull worked out elsewhere, to hold the model against. */
export interface PullCase {
  readonly words: string;
  readonly situation: PullSituation;
  /** N. */
  readonly force: number;
}

export interface ComparedPulls {
  readonly cases: number;
  /** Largest deviation either way and root mean square of all, as shares of the reference. */
  readonly max: number;
  readonly rms: number;
  readonly worst: { readonly words: string; readonly pull: number; readonly force: number };
  /** How many lie outside the limits of the model; they are compared all the same. */
  readonly outside: number;
}

const positive = v.pipe(v.number(), v.finite(), v.gtValue(0));

const bhPoints = v.pipe(
  v.array(v.tuple([v.pipe(v.number(), v.minValue(0)), v.pipe(v.number(), v.minValue(0))])),
  v.minLength(3),
  v.check(
    ([first, ...rest]) =>
      first?.[0] === 0 &&
      first[1] === 0 &&
      rest.every(([h, b], i) => h > [first, ...rest][i]![0] && b > [first, ...rest][i]![1]),
    'must begin with [0, 0] and rise in both H (A/m) and B (T)',
  ),
);

const caseFile = v.object({
  bhCurve: v.optional(v.object({ points: bhPoints })),
  magnetGrades: v.record(v.string(), v.object({ Br: positive, mur: v.pipe(positive, v.minValue(1)) })),
  cases: v.pipe(
    v.array(
      v.object({
        grade: v.string(),
        diameter_mm: positive,
        height_mm: positive,
        sheet_mm: positive,
        gap_mm: v.pipe(v.number(), v.finite(), v.minValue(0)),
        force_N: positive,
      }),
    ),
    v.minLength(1, 'has no cases'),
  ),
});

export interface ReadCases {
  readonly cases: readonly PullCase[];
  /** H, A/m, and B, T, of the steel they were worked out with; absent: the file does not say. */
  readonly steel?: readonly (readonly [H: number, B: number])[];
}

/** The cases of a reference file, or one sentence that says what is wrong with it and where. */
export function readPullCases(text: string): ReadCases | { readonly fault: string } {
  const broken = findJsonFault(text);
  if (broken) {
    const line = text.slice(0, broken.offset).split('\n').length;
    return { fault: `is no JSON text: line ${line} wants ${broken.wanted}.` };
  }
  const parsed = v.safeParse(caseFile, JSON.parse(text));
  if (!parsed.success) {
    const [issue] = parsed.issues;
    return { fault: `${v.getDotPath(issue) ?? 'the whole'}: ${issue.message}.` };
  }
  const { magnetGrades, cases, bhCurve } = parsed.output;
  const read: PullCase[] = [];
  for (const [i, { grade, diameter_mm, height_mm, sheet_mm, gap_mm, force_N }] of cases.entries()) {
    const magnet = Object.hasOwn(magnetGrades, grade) ? magnetGrades[grade] : undefined;
    if (!magnet)
      return {
        fault: `cases.${i}.grade: there is no ${JSON.stringify(grade)} in magnetGrades; add it there.`,
      };
    read.push({
      words: `${grade} ${diameter_mm}×${height_mm} mm, steel ${sheet_mm} mm, gap ${gap_mm} mm`,
      situation: {
        diameter: diameter_mm,
        height: height_mm,
        Br: magnet.Br,
        mur: magnet.mur,
        thickness: sheet_mm,
        gap: gap_mm,
      },
      force: force_N,
    });
  }
  return { cases: read, ...(bhCurve && { steel: bhCurve.points }) };
}

/**
 * @param cases at least one
 * @param pullAt N
 */
export function comparePulls(
  cases: readonly PullCase[],
  pullAt: (situation: PullSituation) => number = (situation) => pullOf(situation).F,
): ComparedPulls {
  const compared = cases.map(({ words, situation, force }) => {
    const pull = pullAt(situation);
    return { words, pull, force, off: Math.abs(pull / force - 1) };
  });
  // Not below: a deviation that is no number would be lost in a comparison.
  const worst = compared.reduce((a, b) => (b.off <= a.off ? a : b));
  return {
    cases: cases.length,
    max: worst.off,
    rms: Math.sqrt(compared.reduce((sum, { off }) => sum + off * off, 0) / cases.length),
    worst,
    outside: cases.filter(({ situation }) => outsideLimits(situation).length > 0).length,
  };
}
