import type { WorkedBuildUp } from './build-up/worked-build-up';
import type { PlannedSheet } from './cutting/plan';
import type { Finding } from './finding';
import type { HungVerdict } from './holding/judge-wall';
import type { Job } from './job/schema';
import type { ZoneLayout } from './panels/panel';
import type { SurveyedWall } from './survey/surveyed-wall';
import type { ZoneArea } from './zones/zone-area';

export interface WorkedZone {
  readonly area: ZoneArea;
  /** null: the zone has no steel. */
  readonly layout: ZoneLayout | null;
  readonly buildUp: WorkedBuildUp;
}

export interface WorkedWall {
  readonly survey: SurveyedWall;
  readonly zones: readonly WorkedZone[];
  /** Of every hung item, in the order of the list. */
  readonly hung: readonly HungVerdict[];
  readonly hungFindings: readonly Finding[];
}

/** A planned stock sheet of the whole job. */
export interface JobSheet extends PlannedSheet {
  /** N1, N2, … for bought sheets in the order of the plan; the rack piece's id for racked ones. */
  readonly id: string;
  readonly delivery: string;
  /** Sheets with the same number are cut alike (same stock, same sizes at the same places). From 1. */
  readonly pattern: number;
}

export interface JobCutting {
  readonly sheets: readonly JobSheet[];
  readonly newSheets: number;
  readonly lowerBound: number;
  readonly cost: number;
  readonly costLowerBound: number;
  readonly leastPossible: boolean;
  /** Bought sheets per stock: planned, spare, to order. */
  readonly order: readonly { readonly stock: string; readonly plan: number; readonly spares: number }[];
}

/** Everything that follows from a job, for screen, documents and results file alike. */
export interface WorkedOut {
  readonly job: Job;
  readonly walls: readonly WorkedWall[];
  readonly cutting: JobCutting;
  readonly findings: readonly Finding[];
  /** Cutting steps this plan took; the same job and steps give the same plan everywhere. */
  readonly steps: number;
}
