import type { Finding } from '../finding';
import type { Box, Point, Polygon } from '../geometry/polygon';
import type { HandOutcome } from './by-hand/hand-outcomes';
import type { Creep } from './creep';
import type { FixingOrder } from './fixing-order';
import type { EdgeCause } from '../survey/surveyed-wall';

/** A piece of steel as it is fixed on the wall; wall frame, hundredths. */
export interface Panel {
  /** `A-Z1-07`: wall, zone, number. */
  readonly mark: string;
  readonly stock: string;
  /** That stock sheet was chosen by hand, and no other will do. */
  readonly fromStock?: boolean;
  /** To be measured on the wall before it is cut, and fixed last. */
  readonly closing?: boolean;
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
  /** How much of what was chosen by hand it does not meet, as `StartRules` weighs it; absent where nothing was. */
  readonly unmet?: number;
  readonly slivers: number;
  /** Joints too near to a corner of an opening. */
  readonly nearCorners: number;
  /** Stock sheets for the zone's own panels after a fast nest. */
  readonly stockSheets: number;
  readonly cutPanels: number;
  /** Of the rims of the cut panels what has to be cut, hundredths: all that is no side of a stock sheet. */
  readonly cutLength: number;
  readonly panels: number;
  /** 0 = mirror-symmetric about the zone's vertical middle; larger is less so. Unit: hundredths. */
  readonly asymmetry: number;
}

/** A connected part of a zone with a start of its own. */
export interface StartedPart {
  readonly start: Point;
  /** Bounding box of the part, wall frame. */
  readonly box: Box;
  readonly considered: number;
  /** What the start leads to in this part alone. */
  readonly chosen: StartCandidate;
}

/** A place in a zone where nothing is fixed, as chosen by hand; wall frame, hundredths. */
export interface LeftOut {
  /** Of the choice. */
  readonly id: string;
  readonly outline: Polygon;
}

export interface ZoneLayout {
  /** Lower left corner of a panel cell, the one that the grid is counted from; of several parts, in the first. */
  readonly start: Point;
  readonly panels: readonly Panel[];
  /** How many starts were compared; 1 unless the start was "best". */
  readonly considered: number;
  /** What the best start leads to, to weigh the next best against; undefined unless the start was "best". */
  readonly chosen?: StartCandidate;
  /** The next best, up to three, best first; empty unless the start was "best". */
  readonly runnersUp: readonly StartCandidate[];
  /** Where every part of the zone has a start of its own; the next best are then starts for all parts alike. */
  readonly parts?: readonly StartedPart[];
  /** In which order the panels go on the wall, and what the first ones stand on. */
  readonly fixing: FixingOrder;
  /** The row and the column that may come out longest or shortest, where stock sheets have a tolerance. */
  readonly creep: readonly Creep[];
  /** What was chosen by hand, and whether it could be met; absent where nothing was. */
  readonly byHand?: readonly HandOutcome[];
  /** Where a panel would be and by hand is none; absent where nothing was left out. */
  readonly leftOut?: readonly LeftOut[];
  readonly findings: readonly Finding[];
}
