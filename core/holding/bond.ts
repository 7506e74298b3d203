import type { Mm } from '../units';
import { given, type CalculationLine } from './calculation';
import { edgeDistance } from './derating';
import { standardGravity } from './force-units';
import type { Judgement, Verdict } from './judge-item';
import { across } from './magnet';

/*
 * What hangs on a panel hangs on the panel's adhesive: its weight along the bond, and what pulls at an edge as peel. Adhesives
 * creep, so that a load that stays may take a tenth of the strength that a data sheet states for a short test, and one that
 * passes half of it: common practice, no source.
 */
export const stayingShare = 0.1;
export const passingShare = 0.5;

/** As the data sheet of the adhesive states it; absent: it does not. */
export interface AdhesiveStrength {
  /** Lap shear, N/mm². */
  readonly shear?: number;
  /** Peel, N per mm of width. */
  readonly peel?: number;
}

export interface BondedPanel {
  /** mm². */
  readonly area: number;
  /** Share of it that is wetted by adhesive. */
  readonly wetted: number;
  /** Of the steel and everything over it, kg/m². */
  readonly massPerArea: number;
  /** Weight of what hangs on it, N. */
  readonly hung: number;
}

/** A magnet on the panel, as it pulls at it. */
export interface MagnetOnPanel {
  /** Of the edge, how much bears its pull: a disc's diameter, the shorter side of a block. */
  readonly diameter: Mm;
  /** Its longest measure: an edge counts as near by it. */
  readonly across: Mm;
  /** From its rim to the panel's edge; absent: not known, and taken for near. */
  readonly clearance?: Mm;
  /** Tension in use, N: `RigidState.T`. */
  readonly tension: number;
  /** What it pulls at most when it is torn straight off, N: `PullAtPlace.most`. */
  readonly most: number;
}

/** What the magnets of these numbers, which lie on one panel, do to it; nothing where the item has a fault and none were counted. */
export function magnetsOnPanel({ magnets, state }: Judgement, numbers: readonly number[]): MagnetOnPanel[] {
  return numbers.flatMap((i) => {
    const counted = magnets[i];
    if (!counted) return [];
    const { place, pull } = counted;
    const { clearance } = place;
    return {
      diameter: place.magnet.diameter,
      across: across(place.magnet),
      ...(clearance === undefined ? {} : { clearance }),
      tension: Math.max(0, state?.T[i] ?? 0),
      most: pull.most,
    };
  });
}

export interface BondResult {
  /** `holds only if tested` is never said of a bond. */
  readonly verdict: Exclude<Verdict, 'holds only if tested'>;
  /** Weight on the bond: N, and N/m² of the panel. */
  readonly weight: number;
  readonly weightPerArea: number;
  /** Stress over what the strength allows; undefined where the strength is not stated. */
  readonly shearUtilisation?: number;
  readonly peelUtilisation?: number;
  readonly reasons: readonly string[];
  readonly lines: readonly CalculationLine[];
}

/**
 * Shear of the bond by weight, and peel of the panel's edge by the magnets near it: within 1.5 diameters the pull of a magnet
 * is borne by a width of the edge as wide as the magnet. Further in, the panel lies on its bond all round, and no edge peels.
 */
export function checkBond(
  panel: BondedPanel,
  adhesive: AdhesiveStrength,
  magnets: readonly MagnetOnPanel[],
): BondResult {
  const weight = (panel.massPerArea * standardGravity * panel.area) / 1e6 + panel.hung;
  const weightPerArea = (weight / panel.area) * 1e6;
  const faults = faultsOf(panel, adhesive, magnets);
  if (faults.length > 0)
    return { verdict: 'cannot be judged', weight, weightPerArea, reasons: faults, lines: [] };
  const tau = weight / (panel.area * panel.wetted);
  const near = magnets.filter(isNearEdge);
  const staying = Math.max(0, ...near.map(({ tension, diameter }) => tension / diameter));
  const passing = Math.max(0, ...near.map(({ most, diameter }) => most / diameter));

  const { shear, peel } = adhesive;
  const shearUtilisation = shear === undefined ? undefined : tau / (stayingShare * shear);
  const peelUtilisation =
    near.length === 0
      ? 0
      : peel === undefined
        ? undefined
        : Math.max(staying / (stayingShare * peel), passing / (passingShare * peel));
  const known = [shearUtilisation, peelUtilisation].filter((use) => use !== undefined);
  const fails = known.some((use) => !(use <= 1));
  const isKnown = known.length === 2;
  return {
    verdict: fails ? 'does not hold' : isKnown ? 'holds' : 'cannot be judged',
    weight,
    weightPerArea,
    ...(shearUtilisation === undefined ? {} : { shearUtilisation }),
    ...(peelUtilisation === undefined ? {} : { peelUtilisation }),
    reasons: [
      ...(shear === undefined
        ? ['The adhesive’s shear strength is not stated: enter it from the data sheet.']
        : []),
      ...(peelUtilisation === undefined
        ? [
            'The adhesive’s peel strength is not stated, and a magnet pulls near an edge: enter it, or move the magnet inward.',
          ]
        : []),
      ...((shearUtilisation ?? 0) > 1
        ? ['The weight is too much for the bond: hang less on this panel.']
        : []),
      ...((peelUtilisation ?? 0) > 1
        ? [
            'A magnet torn off so near the edge can peel the panel: move it inward, or fix the edge mechanically.',
          ]
        : []),
    ],
    lines: bondLines(panel, adhesive, { weight, weightPerArea, tau, staying, passing }),
  };
}

/** Where its pull goes into an edge of the panel rather than into the middle of the bond. */
export function isNearEdge({ clearance = 0, across }: MagnetOnPanel): boolean {
  return clearance < edgeDistance * across;
}

interface BondFigures {
  readonly weight: number;
  readonly weightPerArea: number;
  readonly tau: number;
  readonly staying: number;
  readonly passing: number;
}

function bondLines(
  { area, wetted, massPerArea, hung }: BondedPanel,
  { shear, peel }: AdhesiveStrength,
  { weight, weightPerArea, tau, staying, passing }: BondFigures,
): CalculationLine[] {
  const line = (
    symbol: string,
    words: string,
    value: number,
    unit: string,
    source: string,
    formula?: string,
  ) => ({
    part: 'modes' as const,
    symbol,
    words,
    value,
    unit,
    source,
    ...(formula ? { formula } : {}),
  });
  const judged = 'common practice, no source';
  return [
    line('A', 'area of the panel', area / 1e6, 'm²', given),
    line('κ', 'share of it that is wetted', wetted, '', given),
    line('m', 'mass of steel and layers over it', massPerArea, 'kg/m²', given),
    line('ΣW', 'weight of what hangs on it', hung, 'N', given),
    line('G', 'weight on the bond', weight, 'N', 'g = 9.80665 m/s²', 'm g A + ΣW'),
    line('G/A', 'weight on the bond by area', weightPerArea, 'N/m²', 'statics'),
    line('τ', 'shear in the bond', tau, 'N/mm²', 'statics', 'G / (κ A)'),
    ...(shear === undefined
      ? []
      : [
          line(
            'τallowed',
            'a tenth of the stated strength, as the load stays',
            stayingShare * shear,
            'N/mm²',
            judged,
          ),
        ]),
    line('p', 'peel at the edge in use', staying, 'N/mm', 'statics', 'T / D'),
    line('pmax', 'peel at the edge when a magnet is torn off', passing, 'N/mm', 'statics', 'Fmax / D'),
    ...(peel === undefined
      ? []
      : [
          line(
            'pallowed',
            'a tenth of the stated strength for what stays',
            stayingShare * peel,
            'N/mm',
            judged,
          ),
          line(
            'pmax,allowed',
            'half of the stated strength for what passes',
            passingShare * peel,
            'N/mm',
            judged,
          ),
        ]),
  ];
}

function faultsOf(
  { area, wetted, massPerArea, hung }: BondedPanel,
  { shear = 1, peel = 1 }: AdhesiveStrength,
  magnets: readonly MagnetOnPanel[],
): string[] {
  const said: string[] = [];
  if (!(area > 0)) said.push('The panel has no area: lay it out first.');
  if (!(wetted > 0 && wetted <= 1))
    said.push('The wetted share of the bond has to be above 0 and at most 1.');
  if (!(massPerArea >= 0 && hung >= 0)) said.push('A weight on the panel is missing: enter it.');
  if (!(shear > 0 && peel > 0)) said.push('A stated strength of the adhesive has to be above 0.');
  if (magnets.some(({ diameter, tension, most }) => !(diameter > 0 && Number.isFinite(tension) && most >= 0)))
    said.push('A magnet on the panel has no diameter or pull: enter it.');
  return said;
}
