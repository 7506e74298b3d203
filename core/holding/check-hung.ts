import type { Job, Wall } from '../job/schema';
import { checkItem, type HoldingResult } from './check-item';
import { kilogramsOfNewtons } from './force-units';
import { judgeHung, wallOfItems, type JudgedHung } from './judge-wall';
import { holdingCautions } from './safety';
import type { HoldingZone } from './zone-ground';

/** A hung item with its calculation in full. */
export interface HungCheck extends JudgedHung {
  /** Undefined where the item cannot be put to the calculation. */
  readonly result?: HoldingResult;
  /** Largest safe weight of what it carries, or of itself if it carries nothing, kg. */
  readonly largestWeight?: number;
  readonly assumptions: readonly string[];
  readonly cautions: HoldingResult['cautions'];
}

/** All items of a wall with their calculations, in the order of the list. */
export function checkWall(job: Job, wall: Wall, zones: readonly HoldingZone[]): HungCheck[] {
  return judgeHung(wallOfItems(job, wall, zones)).map(checkJudged);
}

/** One of them; undefined if the wall has no item of that id. */
export function checkHung(
  job: Job,
  wall: Wall,
  zones: readonly HoldingZone[],
  id: string,
): HungCheck | undefined {
  const judged = judgeHung(wallOfItems(job, wall, zones)).find(({ item }) => item.id === id);
  return judged && checkJudged(judged);
}

/** What was judged, with its calculation. */
export function checkJudged(judged: JudgedHung): HungCheck {
  const { held, notes } = judged.placed;
  if (!held || judged.verdict.isScrewed) return { ...judged, assumptions: notes, cautions: holdingCautions };
  const result = checkItem(held, judged.judgement);
  return {
    ...judged,
    result,
    ...(result.largestWeight !== undefined && { largestWeight: kilogramsOfNewtons(result.largestWeight) }),
    assumptions: [...notes, ...result.assumptions],
    cautions: result.cautions,
  };
}
