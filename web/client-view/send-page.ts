import type { DrawnAlternative } from '../../core/drawings/client-alternatives';
import type { Pictures } from '../../core/drawings/pictures';
import type { WorkedOut } from '../../core/worked-out';
import regular from '@fontsource/fira-sans/files/fira-sans-latin-400-normal.woff2?url';
import semiBold from '@fontsource/fira-sans/files/fira-sans-latin-600-normal.woff2?url';
import { screenMeasure } from '../look/screen-measure';
import script from './sent/sent.js?raw';
import style from './sent/sent.css?raw';

/**
 * The page that is sent to the client, whole in one text.
 *
 * @param alternatives all of the job in their order; empty: only what is on the walls
 * @param priced whether the client may see prices
 */
export async function pageToSend(
  worked: WorkedOut,
  alternatives: readonly DrawnAlternative[],
  pictures: Pictures,
  priced: boolean,
): Promise<string> {
  const [{ sentPage }, { pricedOf }, { priceRows, timeRows }, fonts] = await Promise.all([
    import('../../core/drawings/picture/sent-page'),
    import('../../core/drawings/priced-documents'),
    import('../../core/offer/alternatives'),
    Promise.all([
      bytesOf(regular).then((bytes) => ({ weight: 400 as const, bytes })),
      bytesOf(semiBold).then((bytes) => ({ weight: 600 as const, bytes })),
    ]),
  ]);
  const shown = alternatives.length > 1 ? alternatives : [{ title: 'As planned', worked }];
  const compared = shown.map((alternative) => pricedOf(worked, alternative));
  const rows = [...(priced ? priceRows(compared) : []), ...timeRows(compared)];
  return sentPage(
    { job: worked.job, alternatives: shown, rows, pictures },
    { style, script, fonts },
    screenMeasure,
  );
}

async function bytesOf(address: string): Promise<Uint8Array> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`A font of the page could not be loaded (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}
