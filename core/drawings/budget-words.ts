import type { Wall } from '../job/schema';

/** What stands in the title block of a page that shows a wall which nobody has measured on site. */
export const budgetOnly = 'Budget until surveyed';

/**
 * @param walls that the page shows
 * @returns the field of the title block; nothing where all of them are surveyed
 */
export function budgetField(walls: readonly Pick<Wall, 'id' | 'surveyed'>[]): { readonly status?: string } {
  const budget = walls.filter(({ surveyed }) => surveyed === false);
  if (budget.length === 0) return {};
  if (budget.length === walls.length) return { status: budgetOnly };
  return { status: `${budgetOnly}: wall ${budget.map(({ id }) => id).join(', ')}` };
}
