import { contacts, magnetMaterials, magnetShapes, type MagnetRecord } from '../../core/job/magnet-schema';
import type { SettingField } from '../price/setting-fields';
import { tidy } from './force-text';

export const shapeWords: Readonly<Record<(typeof magnetShapes)[number], string>> = {
  disc: 'disc',
  pot: 'in a steel cup',
  ring: 'ring',
  block: 'block',
  foil: 'foil',
};

const contactWords: Readonly<Record<(typeof contacts)[number], string>> = {
  metal: 'metal',
  ferrite: 'bare ferrite',
  paper: 'paper',
  rubber: 'rubber',
};

const options = <V extends string>(values: readonly V[], words: (value: V) => string) =>
  values.map((value) => ({ value, label: words(value) }));
const span = { of: 'number', above: 0, most: 1000, needed: true } as const;
const extra = { of: 'number', above: 0, most: 1000 } as const;

const cupFields: readonly SettingField[] = [
  { path: 'cup.magnet', label: 'Magnet in the cup, diameter', unit: 'mm', kind: extra },
  { path: 'cup.wall', label: 'Wall of the cup', unit: 'mm', kind: extra },
  { path: 'cup.floor', label: 'Floor of the cup', unit: 'mm', kind: extra },
  {
    path: 'cup.recess',
    label: 'Face behind the rim',
    unit: 'mm',
    kind: { of: 'number', least: 0, most: 1000 },
  },
];

const [length, bore, area]: readonly SettingField[] = [
  { path: 'length', label: 'Longer side', unit: 'mm', kind: extra },
  { path: 'bore', label: 'Bore', unit: 'mm', kind: extra },
  { path: 'ratedPerArea', label: "Maker's pull by area", unit: 'N/cm²', kind: extra },
];

/** Everything of a magnet but its name, its rated pull and its price, which are columns. */
export function magnetFields({ shape }: MagnetRecord): readonly SettingField[] {
  const isLong = shape === 'block' || shape === 'foil';
  return [
    {
      path: 'shape',
      label: 'Shape',
      kind: { of: 'choice', options: options(magnetShapes, (one) => shapeWords[one]) },
    },
    { path: 'diameter', label: isLong ? 'Shorter side' : 'Diameter', unit: 'mm', kind: span },
    ...(isLong ? [length!] : []),
    ...(shape === 'ring' || shape === 'pot' ? [bore!] : []),
    ...(shape === 'pot' ? cupFields : []),
    { path: 'height', label: 'Height', unit: 'mm', kind: span },
    {
      path: 'material',
      label: 'Material',
      kind: { of: 'choice', options: options(magnetMaterials, String) },
    },
    {
      path: 'remanence',
      label: 'Remanence',
      unit: 'T',
      kind: { of: 'number', above: 0, most: 2, needed: true },
    },
    {
      path: 'recoil',
      label: 'Recoil permeability',
      kind: { of: 'number', least: 1, most: 2, needed: true },
    },
    {
      path: 'contact',
      label: 'Touches the wall with',
      kind: { of: 'choice', options: options(contacts, (one) => contactWords[one]) },
    },
    {
      path: 'cover',
      label: 'Cover on that face',
      unit: 'mm',
      kind: { of: 'number', most: 1000, needed: true },
    },
    ...(shape === 'foil' ? [area!] : []),
  ];
}

/** `20 × 5`, `40 × 20 × 5`, `20 / 6 × 5` with its bore. */
export function sizesInWords({ shape, diameter, length, bore, height }: MagnetRecord): string {
  const isLong = (shape === 'block' || shape === 'foil') && length !== undefined;
  const face = isLong ? `${tidy(length)} × ${tidy(diameter)}` : tidy(diameter);
  return `${face}${bore === undefined ? '' : ` / ${tidy(bore)}`} × ${tidy(height)}`;
}

/** With what no longer belongs to its shape taken out. */
export function fitToShape(magnet: MagnetRecord): MagnetRecord {
  const { length, bore, cup, ratedPerArea, ...rest } = magnet;
  const { shape } = rest;
  return {
    ...rest,
    ...((shape === 'block' || shape === 'foil') && length !== undefined && { length }),
    ...((shape === 'ring' || shape === 'pot') && bore !== undefined && { bore }),
    ...(shape === 'pot' && cup !== undefined && { cup }),
    ...(shape === 'foil' && ratedPerArea !== undefined && { ratedPerArea }),
  };
}
