import { given, note, type CalculationLine, type CalculationPart } from './calculation';
import type { SteelGround } from './ground';
import { strongestBr, type PullSituation } from './limits';
import { blockShares, type Magnet } from './magnet';
import { ferriticShare, gapMore, tolerances, wideShare, type PullRange } from './pull-range';
import { thicknessTolerance } from './sheet-tolerance';

type Row = readonly [
  symbol: string,
  words: string,
  value: number,
  unit: string,
  source: string,
  formula?: string,
];

/** The calculation of a pull, line by line. */
export function pullLines(
  magnet: Magnet,
  situation: PullSituation,
  ground: SteelGround,
  { pull, nominal, least }: PullRange,
): CalculationLine[] {
  const { Br, gap } = situation;
  const wide = wideShare(situation);
  const { by, source } = thicknessTolerance(ground.thickness, ground.order);
  const more = gapMore(ground);
  const fit = `${note}, section 2 (fit)`;
  const wall: readonly Row[] = [
    ['t', 'thickness of the steel', ground.thickness, 'mm', given],
    ['Δt', 'the steel may be thinner by', by, 'mm', source],
    ['g', `gap from the face of ${magnet.name} to the steel`, gap, 'mm', given],
    [
      'Δg',
      'the gap may be larger by',
      more,
      'mm',
      more === tolerances.gap ? `${note}, section 3` : 'layers, hollows and joints of the zone',
    ],
    ...(ground.steel === 'ferritic-stainless'
      ? [
          [
            'σ',
            'saturation as a share of mild steel’s, in Fsat',
            ferriticShare,
            '',
            `${note}, section 3 (from memory)`,
          ] as const,
        ]
      : []),
  ];
  const bought: readonly Row[] = [
    magnet.shape === 'block'
      ? [
          'D',
          `disc of the same face as the block ${magnet.name}`,
          magnet.diameter,
          'mm',
          'judgement',
          '√(4 a b / π)',
        ]
      : ['D', `diameter of ${magnet.name}, D = 2 R`, magnet.diameter, 'mm', given],
    ['H', 'height', magnet.height, 'mm', given],
    ['Br', 'remanence, at the hottest', Math.min(Br, strongestBr), 'T', `${given}; ${note}, section 3`],
    ['μr', 'recoil permeability', magnet.mur, '', given],
  ];
  const worked: readonly Row[] = [
    [
      'F₀',
      'force to ideal, thick iron',
      pull.F0,
      'N',
      'Furlani 2001; Vokoun et al. 2009: method of images',
      'Br² π R² / μ₀ · [I(2g/R) − 2 I((2g+H)/R) + I((2g+2H)/R)]',
    ],
    [
      'c',
      'recoil correction',
      pull.c,
      '',
      fit,
      '1.43 (μr − 1) / (1 + 2.2 H/R) · (g + 0.109 H) / (g + 0.0384 R + 0.109 H)',
    ],
    ['Fthick', 'force to thick steel', pull.Fthick, 'N', `${note}, section 2`, 'F₀ / (1 + c)²'],
    [
      'S₁',
      'part along the saturated sheet',
      pull.S1,
      'T',
      fit,
      '0.899 · 2.0 [ψ(g/R) − ψ((g+H)/R)], ψ(s) = √(1 + s²) − s',
    ],
    [
      'S₂',
      'part across the saturated sheet',
      pull.S2,
      'T',
      fit,
      '0.159 ln[(1 + R/(g + 0.135 t)) / (1 + R/(g + 0.135 t + 2.33 H))]',
    ],
    [
      'Fsat',
      'force to the saturated sheet',
      pull.Fsat,
      'N',
      fit,
      'π t R Br^1.0405 / μ₀ · (S₁ + S₂)(1 + 1.02 t/R)',
    ],
    ['x', 'exponent that joins both', pull.x, '', fit, 'max(2.5, 7.42 − 7.49 g/R)'],
    [
      'F',
      `pull of ${magnet.name} straight off`,
      pull.F,
      'N',
      `${note}, section 2; within 8 %`,
      'Fthick (1 + (Fthick/Fsat)^x)^(−1/x)',
    ],
  ];
  const counted: readonly Row[] =
    wide === 1
      ? []
      : [
          [
            'Fw',
            'of which is counted, the magnet being over 80 times as wide as the steel is thick',
            pull.F * wide,
            'N',
            'finite elements',
            'F / (1 + 0.12 (D/t − 80) / 53.3)',
          ],
        ];
  const ofBlock: readonly Row[] =
    magnet.shape === 'block'
      ? [
          [
            'Fb',
            'of which is counted, being the pull of a disc that stands for the block',
            nominal,
            'N',
            'judgement: thick steel, method of images, 0.91 at least',
            `${blockShares.counted} ${wide === 1 ? 'F' : 'Fw'}`,
          ],
        ]
      : [];
  const worst: Row = [
    'Fmin',
    'pull with remanence −3 %, thinner sheet, larger gap, steel −10 % at once',
    least,
    'N',
    `${note}, section 3`,
  ];
  return [
    ...rows('wall', wall),
    ...rows('magnet', bought),
    ...rows('pull', [...worked, ...counted, ...ofBlock]),
    ...rows('tolerances', [worst]),
  ];
}

function rows(part: CalculationPart, all: readonly Row[]): CalculationLine[] {
  return all.map(([symbol, words, value, unit, source, formula]) => ({
    part,
    symbol,
    words,
    ...(formula === undefined ? {} : { formula }),
    value,
    unit,
    source,
  }));
}
