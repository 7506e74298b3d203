import type { Point, Polygon } from '../geometry/polygon';
import type { Hundredth } from '../units';

/*
 * What cutting needs and gives. It does not know what a wall is. Lengths in hundredths; a stock sheet's
 * lower left corner is the origin of its frame.
 */

export interface CutPanel {
  readonly mark: string;
  /** Stock the panel is laid from, and every other it may be cut from. */
  readonly stock: readonly string[];
  /** Any frame: only the shape counts. */
  readonly outline: Polygon;
}

/** Margins of a stock sheet that are cut off before anything else. */
export interface StockTrim {
  readonly left: Hundredth;
  readonly right: Hundredth;
  readonly bottom: Hundredth;
  readonly top: Hundredth;
}

export interface StockFormat {
  readonly id: string;
  /** Once its margins are cut off. */
  readonly width: Hundredth;
  readonly height: Hundredth;
  /** Not part of the size above; none if not given. */
  readonly trim?: StockTrim;
  /** In whole minor units of the job's currency. */
  readonly price: number;
  readonly hasFace: boolean;
  /** How many can be bought; as many as needed if not given. */
  readonly available?: number;
}

export interface RackOffcut {
  readonly id: string;
  readonly stock: string;
  readonly width: Hundredth;
  readonly height: Hundredth;
  /** What using it costs, in whole minor units; nothing if not given. */
  readonly value?: number;
}

export type CuttingMethod = 'edge-to-edge' | 'free';

/** One delivery. */
export interface CuttingTask {
  readonly panels: readonly CutPanel[];
  readonly stock: readonly StockFormat[];
  readonly rack: readonly RackOffcut[];
  readonly method: CuttingMethod;
  readonly kerf: Hundredth;
  readonly leastOffcut: readonly [Hundredth, Hundredth];
}

export interface Placement {
  readonly mark: string;
  /** Sheet frame. The panel turned over first (x → −x), then turned, then moved. */
  readonly outline: Polygon;
  /** Quarter turns anticlockwise, 0 to 3. */
  readonly quarterTurns: 0 | 1 | 2 | 3;
  readonly turnedOver: boolean;
}

export interface Offcut {
  readonly x: Hundredth;
  readonly y: Hundredth;
  readonly width: Hundredth;
  readonly height: Hundredth;
  readonly keep: boolean;
}

/**
 * Where the kerf lies: edge to edge, the line is the lower or left bank of its kerf, so that the piece below or
 * to the left keeps its size; free, the line is the panel's edge and the kerf lies outside the panel.
 */
export interface Cut {
  readonly from: Point;
  readonly to: Point;
  /** Set where the cut only opens a notch or hole of this panel, after its rectangle has been cut out. */
  readonly opens?: string;
}

export interface PlannedSheet {
  readonly stock: string;
  /** Rack piece it is cut from, or null for a bought sheet. */
  readonly fromRack: string | null;
  /** Of the whole stock sheet, margins and all; a rack piece has none. */
  readonly width: Hundredth;
  readonly height: Hundredth;
  readonly placements: readonly Placement[];
  readonly offcuts: readonly Offcut[];
  /** In the order of cutting, margins first; none for a whole sheet without margins. */
  readonly cuts: readonly Cut[];
}

export interface DeliveryPlan {
  readonly sheets: readonly PlannedSheet[];
  readonly newSheets: number;
  /** Bought sheets that no plan can undercut. */
  readonly lowerBound: number;
  /** Minor units. */
  readonly cost: number;
  readonly costLowerBound: number;
}

/**
 * The solver's face. Every `next()` is one step and yields the best plan so far (the same object while nothing
 * better was found); the first step gives a complete plan. It never ends by itself except when the plan is
 * proved least possible. Deterministic in task and seed.
 */
export type CuttingSearch = (task: CuttingTask, seed: number) => Generator<DeliveryPlan, void, void>;

/**
 * The same search for callers that must stay ready to listen: reading a large task and its first plan take a while, and
 * `undefined` comes at pauses of some milliseconds at most until that plan stands. Pauses are no steps.
 */
export type CuttingSearchInSteps = (
  task: CuttingTask,
  seed: number,
) => Generator<DeliveryPlan | undefined, void, void>;
