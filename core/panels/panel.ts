import type { Finding } from '../finding';
import type { Point, Polygon } from '../geometry/polygon';
import type { EdgeCause } from '../survey/surveyed-wall';

/** A piece of steel as it is fixed on the wall; wall frame, hundredths. */
export interface Panel {
  /** `A-Z1-07`: wall, zone, number. */
  readonly mark: string;
  readonly stock: string;
  /** Whole stock sheet. */
  readonly full: boolean;
  readonly sliver: boolean;
  readonly outline: Polygon;
  /** Causes of the edges: ring 0 is `outline.outer`, ring i its i-th hole; edge j goes from point j to j + 1. */
  readonly causes: readonly (readonly EdgeCause[])[];
  /** Lower left corner of the grid cell the panel was cut from. */
  readonly cell: Point;
  /** Course 0 contains or starts at the start; lower courses are negative. */
  readonly course: number;
}

/** A start and what it leads to; the search ranks them in this order. */
export interface StartCandidate {
  readonly start: Point;
  readonly slivers: number;
  /** Stock sheets for the zone's own panels after a fast nest. */
  readonly stockSheets: number;
  readonly cutPanels: number;
  readonly panels: number;
  /** 0 = mirror-symmetric about the zone's vertical middle; larger is less so. Unit: hundredths. */
  readonly asymmetry: number;
}

export interface ZoneLayout {
  /** Lower left corner of a panel cell, the one that the grid is counted from. */
  readonly start: Point;
  readonly panels: readonly Panel[];
  /** How many starts were compared; 1 unless the start was "best". */
  readonly considered: number;
  /** What the best start leads to, to weigh the next best against; undefined unless the start was "best". */
  readonly chosen?: StartCandidate;
  /** The next best, up to three, best first; empty unless the start was "best". */
  readonly runnersUp: readonly StartCandidate[];
  readonly findings: readonly Finding[];
}
