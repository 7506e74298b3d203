const thisTab = 'lodeplan-open-job';
const changedHere = 'lodeplan-changed-here';

/** The job that this tab had open before it was loaded again. */
export function rememberedByTab(): string | null {
  try {
    return sessionStorage.getItem(thisTab);
  } catch {
    return null;
  }
}

export function rememberInTab(id: string): void {
  try {
    sessionStorage.setItem(thisTab, id);
  } catch {
    // Without session storage the job that was open last is found instead.
  }
}

/** Called when the page is left: which job this tab was changing, if any. */
export function rememberChanging(id: string): void {
  try {
    sessionStorage.setItem(changedHere, id);
  } catch {
    // Then a page that is loaded again may find that another tab changes the job by now.
  }
}

/** Whether this page was loaded again and had changed that job; a tab that was duplicated had not. */
export function wasChanging(id: string): boolean {
  const [entry] = performance.getEntriesByType('navigation');
  try {
    return (
      (entry as PerformanceNavigationTiming | undefined)?.type === 'reload' &&
      sessionStorage.getItem(changedHere) === id
    );
  } catch {
    return false;
  }
}
