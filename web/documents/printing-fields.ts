import { usualLabelSheet } from '../../core/job/label-sheets';
import { papers } from '../../core/job/paper-sizes';
import { usualTemplatePaper } from '../../core/job/template-paper';
import type { SettingField } from '../price/setting-fields';

const paper = { of: 'choice', options: papers.map((value) => ({ value, label: value })) } as const;
const onPaper = { of: 'number', most: 200 } as const;
const count = { of: 'number', least: 1, most: 30, whole: true } as const;

export const templateFields: readonly SettingField[] = [
  { path: 'templates.paper', label: 'Paper', kind: paper, usual: usualTemplatePaper.paper },
  {
    path: 'templates.overlap',
    label: 'Pages overlap by',
    unit: 'mm',
    kind: { of: 'number', least: 5, most: 40 },
    usual: String(usualTemplatePaper.overlap),
  },
];

const usual = (of: keyof typeof usualLabelSheet) => String(usualLabelSheet[of]);

export const labelFields: readonly SettingField[] = [
  { path: 'labels.paper', label: 'Paper', kind: paper, usual: usual('paper') },
  { path: 'labels.columns', label: 'Labels side by side', kind: count, usual: usual('columns') },
  { path: 'labels.rows', label: 'Rows of labels', kind: count, usual: usual('rows') },
  { path: 'labels.left', label: 'Left margin', unit: 'mm', kind: onPaper, usual: usual('left') },
  { path: 'labels.right', label: 'Right margin', unit: 'mm', kind: onPaper, usual: usual('right') },
  { path: 'labels.top', label: 'Margin at the head', unit: 'mm', kind: onPaper, usual: usual('top') },
  { path: 'labels.bottom', label: 'Margin at the foot', unit: 'mm', kind: onPaper, usual: usual('bottom') },
  {
    path: 'labels.gapAcross',
    label: 'Gap side by side',
    unit: 'mm',
    kind: onPaper,
    usual: usual('gapAcross'),
  },
  { path: 'labels.gapDown', label: 'Gap between rows', unit: 'mm', kind: onPaper, usual: usual('gapDown') },
  {
    path: 'labels.first',
    label: 'Begin with label',
    kind: { of: 'number', least: 1, most: 900, whole: true },
    usual: '1',
  },
];
