import type { LayerKind } from '../job/product-schema';
import { onceFor } from './once-for';
import type { WallNeeds } from './wall-needs';

/** The area of one layer in one zone; hundredths squared. */
export interface LayerAreaRow {
  readonly delivery: string;
  readonly wall: string;
  readonly zone: string;
  /** Place in the build-up, from 0. */
  readonly layer: number;
  readonly kind: LayerKind;
  /** Id; null: work alone, or steel. */
  readonly product: string | null;
  /** Face, tapered margin and reveals. */
  readonly area: number;
}

/** The area of a zone; hundredths squared. */
export interface ZoneAreaRow {
  readonly delivery: string;
  readonly wall: string;
  readonly zone: string;
  /** Openings out. */
  readonly face: number;
  /** Openings not out. */
  readonly gross: number;
  /** Of panels, by the stock that they are laid from. */
  readonly steel: Readonly<Record<string, number>>;
}

/** One row for each layer that covers the face of its zone; layers over joints or edges, or behind panels, have no area of their own. */
export function layerAreaRows(walls: readonly WallNeeds[]): LayerAreaRow[] {
  return walls.flatMap(layersOfWall);
}

export function zoneAreaRows(walls: readonly WallNeeds[]): ZoneAreaRow[] {
  return walls.flatMap(zonesOfWall);
}

const layersOfWall = onceFor(({ wall: { survey }, zones }: WallNeeds) =>
  zones.flatMap(({ measures, layers, areas }) =>
    layers.flatMap(({ layer, product }, i): LayerAreaRow[] => {
      if ((layer.over ?? 'face') !== 'face') return [];
      const { face, feather, reveals } = areas[i]!;
      return [
        {
          delivery: survey.wall.delivery ?? '',
          wall: survey.wall.id,
          zone: measures.zone.id,
          layer: i,
          kind: layer.kind,
          product: product?.id ?? null,
          area: face + feather + reveals,
        },
      ];
    }),
  ),
);

const zonesOfWall = onceFor(({ wall: { survey }, zones }: WallNeeds) =>
  zones.map(({ measures }): ZoneAreaRow => ({
    delivery: survey.wall.delivery ?? '',
    wall: survey.wall.id,
    zone: measures.zone.id,
    face: measures.faceArea,
    gross: measures.grossArea,
    steel: measures.steelByStock,
  })),
);

/**
 * Sums of rows that say the same, such as by wall, by delivery or by kind of layer. Areas of rectilinear zones are whole
 * hundredths squared, so sums of sums are exact.
 *
 * @example sumsBy(zoneAreaRows(walls), ({ wall }) => wall, ({ face }) => face).get('A')
 */
export function sumsBy<Row>(
  rows: readonly Row[],
  by: (row: Row) => string,
  of: (row: Row) => number,
): Map<string, number> {
  const sums = new Map<string, number>();
  for (const row of rows) sums.set(by(row), (sums.get(by(row)) ?? 0) + of(row));
  return sums;
}
