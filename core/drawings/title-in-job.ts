import type { LodeplanDocument } from './page';

/** "Setting-out sheet, wall A": without the job's name, which all titles begin with. */
export function titleInJob({ title }: LodeplanDocument, jobName: string): string {
  const start = `${jobName}: `;
  const rest = title.startsWith(start) ? title.slice(start.length) : title;
  return rest.charAt(0).toUpperCase() + rest.slice(1);
}
