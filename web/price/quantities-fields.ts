import { filmDirections, pieceKinds, sundryMeasures } from '../../core/job/quantities-schema';
import { measurementRules } from '../../core/quantities/measurement-rules';
import type { SettingField } from './setting-fields';

const millimetres = { of: 'number', most: 10_000 } as const;

export const quantitiesFields: readonly SettingField[] = [
  {
    path: 'measurement',
    label: 'The offer measures by',
    kind: { of: 'choice', options: measurementRules.map(({ id, name }) => ({ value: id, label: name })) },
    usual: 'net',
  },
  {
    path: 'temperature',
    label: 'Work is done at',
    unit: '°C',
    kind: { of: 'number', least: -20, most: 60 },
    usual: '20',
  },
  {
    path: 'hands',
    label: 'Who coat at once',
    unit: 'persons',
    kind: { of: 'number', least: 1, most: 100, whole: true },
    usual: '1',
  },
  {
    path: 'potLifeHalves',
    label: 'Pot life halves with',
    unit: 'K',
    kind: { of: 'number', least: 1, most: 100 },
    usual: '10',
  },
  {
    path: 'hollowShare',
    label: 'Mean filling, of the deepest hollow',
    unit: '%',
    kind: { of: 'percent' },
    usual: '33',
  },
  { path: 'edgeStrip', label: 'Primer over a cut edge', unit: 'mm', kind: millimetres, usual: '20' },
  { path: 'jointStrip', label: 'Strip over a joint', unit: 'mm', kind: millimetres, usual: '100' },
  {
    path: 'propsPerPanel',
    label: 'Props for a panel',
    kind: { of: 'number', least: 0, most: 100, whole: true },
    usual: '2',
  },
  {
    path: 'proppedAtOnce',
    label: 'Panels propped at once',
    kind: { of: 'number', least: 1, most: 1_000, whole: true },
    usual: '6',
  },
  {
    path: 'filmDirection',
    label: 'Strips of film run',
    kind: {
      of: 'choice',
      options: filmDirections.map((value) => ({
        value,
        label: value === 'least-waste' ? 'as wastes least' : value,
      })),
    },
    usual: 'least-waste',
  },
  { path: 'filmOverlap', label: 'Overlap for the double cut', unit: 'mm', kind: millimetres, usual: '30' },
  { path: 'filmTrim', label: 'Film over each edge', unit: 'mm', kind: millimetres, usual: '30' },
  { path: 'filmSeamClear', label: 'Seams clear of joints', unit: 'mm', kind: millimetres, usual: '50' },
];

const measures: Readonly<Record<(typeof sundryMeasures)[number], string>> = {
  m2: 'm² of zone',
  edge: 'm of zone edge',
  joint: 'm of joint',
  box: 'electrical box',
  panel: 'panel',
  job: 'job',
};

export const sundryColumns: readonly SettingField[] = [
  { path: 'name', label: 'what', kind: { of: 'text', needed: true } },
  { path: 'amount', label: 'amount', kind: { of: 'number', above: 0, needed: true } },
  { path: 'unit', label: 'unit', kind: { of: 'text', needed: true } },
  {
    path: 'per',
    label: 'for each',
    kind: { of: 'choice', options: sundryMeasures.map((value) => ({ value, label: measures[value] })) },
  },
  { path: 'packs', label: 'packs', kind: { of: 'packs' } },
];

export const pieceColumns: readonly SettingField[] = [
  {
    path: 'kind',
    label: 'what',
    kind: {
      of: 'choice',
      options: pieceKinds.map((value) => ({ value, label: value.replaceAll('-', ' ') })),
    },
  },
  { path: 'packs', label: 'packs, m or pieces', kind: { of: 'packs' } },
];
