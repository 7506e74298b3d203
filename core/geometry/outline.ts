import type { Ring } from './polygon';

/**
 * A circular arc that a run of a ring's edges stands for: edges `firstEdge … firstEdge + edges − 1`, edge i
 * going from point i to point i + 1 (modulo the ring). Centre and radius are true values in hundredths, not
 * rounded. A full circle has as many edges as its ring.
 */
export interface Arc {
  readonly firstEdge: number;
  readonly edges: number;
  readonly centre: { readonly x: number; readonly y: number };
  readonly radius: number;
}

/** A simple polygon and the arcs it was drawn with, so that a drawing dimensions a diameter, not vertices. */
export interface Outline {
  /** Anticlockwise. */
  readonly ring: Ring;
  readonly arcs: readonly Arc[];
}
