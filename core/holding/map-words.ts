import type { LengthUnits } from '../lengths';
import { pound } from './force-units';
import type { MapBand } from './holding-map';

/** Grams, never rounded up: 98.7 is 98, 234 is 230. */
export function gramsDown(weight: number): number {
  const grams = weight * 1000 + 1e-6;
  const step = grams < 100 ? 1 : grams < 1000 ? 10 : 50;
  return Math.floor(grams / step) * step;
}

/** `230 g`; where lengths are in feet `8 oz`, from two pounds up `2.4 lb`. Never rounded up. */
export function weightDown(weight: number, units: LengthUnits = 'mm'): string {
  if (units !== 'ft-in') return `${gramsDown(weight)} g`;
  const ounces = (weight / pound) * 16 + 1e-9;
  if (ounces >= 32) return `${Math.floor((ounces / 16) * 10) / 10} lb`;
  const step = ounces < 4 ? 10 : 2;
  return `${Math.floor(ounces * step) / step} oz`;
}

/** What may hang on a hook in a band, as it stands on the map: `230 g`. */
export function hookWords({ verdict, onHook, ifTested }: MapBand, units?: LengthUnits): string {
  if (verdict === 'cannot be judged') return 'not known';
  if (onHook > 0) return `${weightDown(onHook, units)}${verdict === 'holds' ? '' : ' if tested'}`;
  return ifTested > 0 ? `${weightDown(ifTested, units)} if tested` : 'nothing';
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
