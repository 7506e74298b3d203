import { given, note, type CalculationLine } from './calculation';
import type { CountedMagnet } from './counted-magnet';
import { edgeDistance, neighbourDistance } from './derating';
import type { HeldItem } from './item';
import { modeNames, type ModeName, type RigidState } from './rigid-item';
import { consequenceWords, stackInFactor } from './safety';

/** The whole calculation of an item, in the order in which it is worked out; alike magnets are written once. */
export function itemLines(
  item: HeldItem,
  magnets: readonly CountedMagnet[],
  state: RigidState,
  worst: RigidState,
  asked: number,
): CalculationLine[] {
  return [
    ...uniqueLines([...new Set(magnets.map(({ pull }) => pull.lines))].flat()),
    ...uniqueLines(magnets.flatMap(sharesOf)),
    ...uniqueLines(
      magnets.map(({ friction }) => ({
        part: 'friction',
        symbol: 'μ',
        words: friction.words,
        value: friction.mu,
        unit: '',
        source: friction.source,
      })),
    ),
    ...loadLines(item, state),
    ...tensionLines(magnets, state),
    ...modeLines(magnets, state, worst, item, asked),
  ];
}

function sharesOf({ derating: { share, isNearEdge, isNearNeighbour } }: CountedMagnet): CalculationLine[] {
  if (share === 1) return [];
  const why = [
    ...(isNearEdge ? [`within ${edgeDistance} D of an edge, joint, hole or screw`] : []),
    ...(isNearNeighbour ? [`within ${neighbourDistance} D of another magnet`] : []),
  ].join(' and ');
  return [
    {
      part: 'pull',
      symbol: 'η',
      words: `share counted ${why}`,
      value: share,
      unit: '',
      source: `${note}, section 3 (judgement)`,
    },
  ];
}

function loadLines({ loads }: HeldItem, { tip, shear, torque }: RigidState): CalculationLine[] {
  const each = loads.flatMap(({ words, down, out, side, reach, y }): CalculationLine[] => [
    ...line('W', words, down, 'N', reach, 'e'),
    ...line('P', `${words}, off the wall`, out, 'N', y, 'yP'),
    ...line('S', `${words}, sideways`, side, 'N', reach, 'e'),
  ]);
  return [
    ...each,
    { part: 'loads', symbol: 'V', words: 'force along the wall', value: shear, unit: 'N', source: 'statics' },
    {
      part: 'loads',
      symbol: 'M',
      words: 'moment about the lowest contact edge',
      formula: 'Σ(W e + P yP)',
      value: tip,
      unit: 'N·mm',
      source: 'statics',
    },
    ...(torque === 0
      ? []
      : [
          {
            part: 'loads' as const,
            symbol: 'Mz',
            words: 'moment in the plane of the wall, about the middle of the magnets',
            value: torque,
            unit: 'N·mm',
            source: 'statics',
          },
        ]),
  ];
}

function line(
  symbol: string,
  words: string,
  force: number,
  unit: string,
  arm: number,
  armSymbol: string,
): CalculationLine[] {
  if (force === 0) return [];
  return [
    { part: 'loads', symbol, words, value: force, unit, source: given },
    { part: 'loads', symbol: armSymbol, words: `its lever, ${words}`, value: arm, unit: 'mm', source: given },
  ];
}

function tensionLines(magnets: readonly CountedMagnet[], state: RigidState): CalculationLine[] {
  const source = `${note}, section 4`;
  const tensions = magnets.map(({ place }, i): CalculationLine => ({
    part: 'loads',
    symbol: 'T',
    words: state.counted[i]
      ? `tension of a magnet at x ${place.x}, y ${place.y} mm`
      : `a magnet at x ${place.x}, y ${place.y} mm counts as absent`,
    ...(state.counted[i] ? { formula: state.tensionFormula } : {}),
    value: state.T[i]!,
    unit: 'N',
    source,
  }));
  const press: CalculationLine = {
    part: 'loads',
    symbol: 'C',
    words: 'press of the lower edge on the wall',
    formula: 'ΣT − P',
    value: state.C,
    unit: 'N',
    source,
  };
  return [...tensions, press];
}

function modeLines(
  magnets: readonly CountedMagnet[],
  state: RigidState,
  worst: RigidState,
  { consequence }: HeldItem,
  asked: number,
): CalculationLine[] {
  const total = magnets.reduce(
    (sum, { pull, derating: { share } }, i) => sum + (state.counted[i] ? pull.nominal * share : 0),
    0,
  );
  const source = `${note}, section 4`;
  const factors = modeNames.flatMap((name): CalculationLine[] => {
    const factor = state.factors[name];
    if (factor === Infinity) return [];
    const { words, formula, from } = formulas[name];
    return [
      { part: 'modes', symbol: `S ${name}`, words, formula, value: factor, unit: '', source: from },
      {
        part: 'modes',
        symbol: `Smin ${name}`,
        words: `${words}, every tolerance against it`,
        value: worst.factors[name],
        unit: '',
        source: from,
      },
    ];
  });
  return [
    {
      part: 'modes',
      symbol: 'ΣF',
      words: 'pull of all magnets counted',
      value: total,
      unit: 'N',
      source: 'sum',
    },
    {
      part: 'modes',
      symbol: 'Q',
      words: 'slip capacity',
      formula: 'Σμ (F − T)',
      value: state.slipCapacity,
      unit: 'N',
      source,
    },
    ...factors,
    {
      part: 'modes',
      symbol: 'SF',
      words: `asked for: ${consequenceWords[consequence]}`,
      value: asked,
      unit: '',
      source,
    },
    {
      part: 'modes',
      symbol: 'SFmin',
      words: 'asked for with every tolerance against it',
      formula: 'SF / (3 · 0.5)',
      value: asked * stackInFactor,
      unit: '',
      source,
    },
  ];
}

const formulas: Readonly<
  Record<ModeName, { readonly words: string; readonly formula: string; readonly from: string }>
> = {
  slip: { words: 'against slipping', formula: 'Q / V', from: `${note}, section 4` },
  turning: {
    words: 'against turning in the plane of the wall',
    formula: '1 / max |V/ΣQ + Mz × r / ΣQ r²|',
    from: 'elastic method of bolt groups: Shigley’s Mechanical Engineering Design, 8-12',
  },
  'pull-off': { words: 'against prying off a magnet', formula: 'min F / T', from: `${note}, section 4` },
  tipping: { words: 'against tipping off as a whole', formula: 'ΣF y / M', from: `${note}, section 4` },
};

function uniqueLines(lines: readonly CalculationLine[]): CalculationLine[] {
  const seen = new Set<string>();
  return lines.filter((one) => {
    const key = JSON.stringify(one);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
