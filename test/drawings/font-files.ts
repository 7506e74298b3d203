import { readFileSync } from 'node:fs';
import type { FontFiles } from '../../core/drawings/fonts';

const packages = new URL('../../node_modules/@expo-google-fonts/', import.meta.url);
const read = (path: string) => new Uint8Array(readFileSync(new URL(path, packages)));

/** The fonts of the documents, as the packages bring them. */
export const fontFiles: FontFiles = {
  sans: read('fira-sans/400Regular/FiraSans_400Regular.ttf'),
  sansSemiBold: read('fira-sans/600SemiBold/FiraSans_600SemiBold.ttf'),
  condensed: read('fira-sans-condensed/400Regular/FiraSansCondensed_400Regular.ttf'),
  condensedSemiBold: read('fira-sans-condensed/600SemiBold/FiraSansCondensed_600SemiBold.ttf'),
};
