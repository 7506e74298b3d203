import type { LodeplanDocument } from '../../core/drawings/page';

/** "Setting-out sheet, wall A": without the job's name, which stands at the top of the screen already. */
export function titleOnScreen({ title }: LodeplanDocument, jobName: string): string {
  const start = `${jobName}: `;
  const rest = title.startsWith(start) ? title.slice(start.length) : title;
  return rest.charAt(0).toUpperCase() + rest.slice(1);
}
