/** The path of a Chromium or Chrome; exits saying what was tried where there is none. */
export function findBrowser(): Promise<string>;
