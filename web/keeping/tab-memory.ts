const thisTab = 'lodeplan-open-job';

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
