import type { WorkedOut } from '../worked-out';
import { countText } from './figure-text';
import type { JobFigures } from './job-figures';

/**
 * What is proved of the number of stock sheets, in plain words: `31 stock sheets: no plan needs fewer`. "No plan" is said
 * only where the plan meets its bound.
 */
export function proofText({ cutting }: Pick<WorkedOut, 'cutting'>): string {
  const { newSheets, lowerBound, leastPossible, cost, costLowerBound } = cutting;
  const number = countText(newSheets, 'stock sheet');
  if (newSheets === 0) return 'No stock sheet is bought: no plan needs fewer.';
  if (newSheets === lowerBound) {
    return leastPossible || cost === costLowerBound
      ? `${number}: no plan needs fewer.`
      : `${number}: no plan needs fewer, but other stock sheets could cost less.`;
  }
  if (leastPossible) return `${number}: no plan costs less.`;
  return `${number}: at least ${lowerBound} ${lowerBound === 1 ? 'is' : 'are'} needed, a better plan may still be found.`;
}

/** `6,2 % of the steel used, kept offcuts not counted`. */
export function wasteText({ wasteShare, keptArea }: JobFigures, percent: (share: number) => string): string {
  const kept = keptArea > 0 ? ', kept offcuts not counted' : '';
  return `${percent(wasteShare)} of the stock sheets and rack pieces used${kept}`;
}
