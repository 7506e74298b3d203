import { dryingKinds, layerKinds, notchShapes, productUnits, toolKinds } from '../../core/job/product-schema';
import type { SettingField } from './setting-fields';

const number = { of: 'number' } as const;
const positive = { of: 'number', above: 0 } as const;
const text = { of: 'text' } as const;
const temperature = { of: 'number', least: -60, most: 150 } as const;

/** "metal-primer" as it is read: "metal primer". */
export function inWords(name: string): string {
  return name.replaceAll('-', ' ');
}

export const unitWords: Readonly<Record<(typeof productUnits)[number], string>> = {
  l: 'l',
  kg: 'kg',
  m2: 'm²',
  m: 'm',
  piece: 'piece',
};

const options = (values: readonly string[], words: (value: string) => string = inWords) =>
  values.map((value) => ({ value, label: words(value) }));

/** Everything of a product that the table has no column for. */
export const productFields: readonly SettingField[] = [
  { path: 'layer', label: 'Layer', kind: { of: 'choice', options: options(layerKinds) } },
  {
    path: 'unit',
    label: 'Unit',
    kind: {
      of: 'choice',
      options: options(productUnits, (unit) => unitWords[unit as keyof typeof unitWords]),
    },
  },
  { path: 'spreadingRate', label: 'Covers, one coat', unit: 'm² per unit', kind: positive },
  { path: 'volumeSolids', label: 'Solids by volume', unit: '%', kind: { of: 'number', above: 0, most: 100 } },
  { path: 'dryFilm', label: 'Dry film, one coat', unit: 'µm', kind: positive },
  { path: 'thickness', label: 'Thickness, one coat', unit: 'mm', kind: positive },
  { path: 'density', label: 'Density', unit: 'kg/l', kind: positive },
  { path: 'weight', label: 'Weight by area', unit: 'kg/m²', kind: positive },
  { path: 'shearStrength', label: 'Lap shear, of an adhesive', unit: 'N/mm²', kind: positive },
  { path: 'peelStrength', label: 'Peel, of an adhesive', unit: 'N/mm', kind: positive },
  { path: 'rollWidth', label: 'Width of a roll', unit: 'mm', kind: positive },
  { path: 'coats', label: 'Coats', kind: { of: 'number', least: 1, most: 20, whole: true }, usual: '1' },
  { path: 'loss', label: 'Loss', unit: '%', kind: { of: 'percent' }, usual: '0' },
  { path: 'pace', label: 'One person does', unit: 'm²/h', kind: positive },
  { path: 'drying', label: 'Dries by', kind: { of: 'choice', options: options(dryingKinds) }, usual: 'none' },
  { path: 'touchDry', label: 'Touch-dry', unit: 'h', kind: number },
  { path: 'recoatLeast', label: 'Next coat not before', unit: 'h', kind: number },
  { path: 'recoatMost', label: 'Next coat not after', unit: 'h', kind: number },
  { path: 'cure', label: 'Cured', unit: 'h', kind: number },
  { path: 'temperatureLeast', label: 'Not below', unit: '°C', kind: temperature },
  { path: 'humidityMost', label: 'Humidity at most', unit: '%', kind: { of: 'number', most: 100 } },
  { path: 'tool.nap', label: 'Roller nap', unit: 'mm', kind: positive },
  { path: 'batch', label: 'Batch', kind: text },
  { path: 'grounds', label: 'Lies on; part by semicolons', kind: { of: 'texts' } },
  { path: 'cautions', label: 'Cautions; part by semicolons', kind: { of: 'texts' } },
  { path: 'note', label: 'Note from the data sheet', kind: text },
];

/** Offered once the product is applied with a tool; the fields of a notched trowel only with one. */
export const toolField: SettingField = {
  path: 'tool.kind',
  label: 'Tool',
  kind: { of: 'choice', options: [{ value: '', label: '–' }, ...options(toolKinds)] },
  usual: '',
};

export const notchFields: readonly SettingField[] = [
  {
    path: 'tool.notch.shape',
    label: 'Notch',
    kind: { of: 'choice', options: options(notchShapes) },
    usual: 'square',
  },
  { path: 'tool.notch.bridge', label: 'Tooth a', unit: 'mm', kind: { of: 'number', needed: true } },
  { path: 'tool.notch.width', label: 'Notch b', unit: 'mm', kind: { of: 'number', above: 0, needed: true } },
  {
    path: 'tool.notch.depth',
    label: 'Notch depth c',
    unit: 'mm',
    kind: { of: 'number', above: 0, needed: true },
  },
  {
    path: 'tool.notch.tilt',
    label: 'Trowel held at',
    unit: '°',
    kind: { of: 'number', least: 1, most: 90 },
    usual: '90',
  },
];

export const mixingFields: readonly SettingField[] = [
  { path: 'mixing.parts.0', label: 'Parts A', kind: { of: 'number', above: 0, needed: true } },
  { path: 'mixing.parts.1', label: 'Parts B', kind: { of: 'number', above: 0, needed: true } },
  {
    path: 'mixing.by',
    label: 'Mixed by',
    kind: { of: 'choice', options: options(['volume', 'weight']) },
    usual: 'volume',
  },
  { path: 'mixing.potLife', label: 'Pot life', unit: 'min', kind: { of: 'number', least: 1, needed: true } },
  { path: 'mixing.potLifeAt', label: 'Pot life at', unit: '°C', kind: temperature, usual: '20' },
  { path: 'mixing.openTime', label: 'Open time', unit: 'min', kind: { of: 'number', least: 1 } },
];
