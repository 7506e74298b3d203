import { polygonArea } from '../geometry/polygon';
import type { HungItem } from '../job/hung-schema';
import {
  checkBond,
  isNearEdge,
  magnetsOnPanel,
  type AdhesiveStrength,
  type BondResult,
  type MagnetOnPanel,
} from './bond';
import { standardGravity } from './force-units';
import type { Judgement } from './judge-item';
import { toSquareMm } from '../units';
import type { Face } from './wall-faces';

/**
 * Share of a full bed that wets the panel once it was pressed: no bed is perfect. Common practice, no source.
 */
export const wettedShare = 0.8;

/** An item that was judged, and what each of its magnets lies on. */
export interface JudgedPlaces {
  readonly item: HungItem;
  readonly judgement: Judgement;
  readonly behind: readonly (Face | undefined)[];
}

/** What hangs on one panel, and whether its adhesive bears that. */
export interface PanelBond {
  readonly panel: string;
  readonly face: Face;
  readonly items: readonly string[];
  /** A magnet pulls at its edge, and nobody states what peel the adhesive bears. */
  readonly isPeelUnstated: boolean;
  readonly result: BondResult;
}

/**
 * Every panel that something hangs on; each magnet of an item bears an equal part of its weight, and of alike pieces all may be
 * on one panel.
 */
export function bondsOf(judged: readonly JudgedPlaces[]): PanelBond[] {
  const panels = new Map<Face, { items: string[]; hung: number; magnets: MagnetOnPanel[] }>();
  for (const { item, judgement, behind } of judged) {
    const mass = (item.weight ?? 0) + (item.load?.weight ?? 0);
    const weight = mass * (item.pieces ?? 1) * standardGravity;
    for (const face of new Set(behind)) {
      if (face?.panel === undefined) continue;
      const on = behind.flatMap((one, i) => (one === face ? [i] : []));
      const panel = panels.get(face) ?? { items: [], hung: 0, magnets: [] };
      panel.items.push(item.id);
      panel.hung += (weight * on.length) / behind.length;
      panel.magnets.push(...magnetsOnPanel(judgement, on));
      panels.set(face, panel);
    }
  }
  return [...panels].map(([face, { items, hung, magnets }]) => ({
    panel: face.panel!,
    face,
    items,
    ...bondOfPanel(face, hung, magnets),
  }));
}

/** @param hung weight of what hangs on the panel, N */
export function bondOfPanel(
  face: Face,
  hung: number,
  magnets: readonly MagnetOnPanel[],
): Pick<PanelBond, 'isPeelUnstated' | 'result'> {
  const strength = strengthOf(face);
  return {
    isPeelUnstated: strength.peel === undefined && magnets.some(isNearEdge),
    result: checkBond(
      {
        area: toSquareMm(polygonArea(face.outline)),
        wetted: wettedShare,
        massPerArea: face.zone.buildUp.figures.mass.value ?? NaN,
        hung,
      },
      strength,
      magnets,
    ),
  };
}

function strengthOf({ zone }: Face): AdhesiveStrength {
  const adhesive = zone.buildUp.resolved.layers.find(({ layer }) => layer.kind === 'adhesive')?.product;
  return {
    ...(adhesive?.shearStrength !== undefined && { shear: adhesive.shearStrength }),
    ...(adhesive?.peelStrength !== undefined && { peel: adhesive.peelStrength }),
  };
}
