import type { MapBand } from './holding-map';

/** Grams, never rounded up: 98.7 is 98, 234 is 230. */
export function gramsDown(weight: number): number {
  const grams = weight * 1000 + 1e-6;
  const step = grams < 100 ? 1 : grams < 1000 ? 10 : 50;
  return Math.floor(grams / step) * step;
}

/** What may hang on a hook in a band, as it stands on the map: `230 g`. */
export function hookWords({ verdict, onHook, ifTested }: MapBand): string {
  if (verdict === 'cannot be judged') return 'not known';
  if (onHook > 0) return `${gramsDown(onHook)} g${verdict === 'holds' ? '' : ' if tested'}`;
  return ifTested > 0 ? `${gramsDown(ifTested)} g if tested` : 'nothing';
}

/** By whom the pull in a band is known. */
export const knownBy: Readonly<Record<MapBand['by'], string>> = {
  'site-test': 'pull test on site',
  maker: 'maker',
  model: 'calculation',
  nothing: '',
};

/** Which part of its panels or areas a band is. */
export function bandPlace({ by, isNearEdge, isOverPeople }: MapBand): string {
  if (by === 'nothing') return 'everywhere';
  const place = isNearEdge ? 'near an edge' : 'clear of edges';
  return isOverPeople ? `${place}, over people` : place;
}
