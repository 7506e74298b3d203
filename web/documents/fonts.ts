import condensed from '@expo-google-fonts/fira-sans-condensed/400Regular/FiraSansCondensed_400Regular.ttf?url';
import condensedSemiBold from '@expo-google-fonts/fira-sans-condensed/600SemiBold/FiraSansCondensed_600SemiBold.ttf?url';
import sans from '@expo-google-fonts/fira-sans/400Regular/FiraSans_400Regular.ttf?url';
import sansSemiBold from '@expo-google-fonts/fira-sans/600SemiBold/FiraSans_600SemiBold.ttf?url';
import type { FontFiles } from '../../core/drawings/fonts';

/** The fonts that measure and print the documents: whole and static, as the PDF embeds them. */
export async function loadFonts(): Promise<FontFiles> {
  const [a, b, c, d] = await Promise.all([sans, sansSemiBold, condensed, condensedSemiBold].map(loadFont));
  return { sans: a!, sansSemiBold: b!, condensed: c!, condensedSemiBold: d! };
}

async function loadFont(address: string): Promise<Uint8Array> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`A font of the documents could not be loaded (${response.status}).`);
  return new Uint8Array(await response.arrayBuffer());
}
