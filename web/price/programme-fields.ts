import { usualHours } from '../../core/job/check-programme';
import { usualProgramme, usualSlowing } from '../../core/programme/usual-rates';
import type { SettingField } from './setting-fields';

const hours = { of: 'number', most: 10_000 } as const;
const degrees = { of: 'number', least: -40, most: 60 } as const;
const percent = { of: 'number', least: 1, most: 100 } as const;

export const programmeFields: readonly SettingField[] = [
  { path: 'start', label: 'Work begins on', kind: { of: 'day' }, usual: 'day 1' },
  { path: 'ordered', label: 'or materials are ordered on', kind: { of: 'day' }, usual: '–' },
  {
    path: 'leadTime',
    label: 'Order to delivery',
    unit: 'days',
    kind: { of: 'number', most: 1000 },
    usual: String(usualProgramme.leadTime),
  },
  {
    path: 'acclimatise',
    label: 'Materials lie in the room',
    unit: 'h',
    kind: hours,
    usual: String(usualProgramme.acclimatise),
  },
  {
    path: 'crew',
    label: 'Crew',
    unit: 'persons',
    kind: { of: 'number', least: 1, most: 100, whole: true },
    usual: String(usualProgramme.crew),
  },
  { path: 'hours.from', label: 'Working day from', kind: { of: 'time' }, usual: usualHours.from },
  { path: 'hours.to', label: 'to', kind: { of: 'time' }, usual: usualHours.to },
  {
    path: 'hours.break',
    label: 'Break',
    unit: 'min',
    kind: { of: 'number', most: 720, whole: true },
    usual: String(usualHours.break),
  },
  {
    path: 'weekdays',
    label: 'Working days, 1 Monday to 7 Sunday',
    kind: { of: 'numbers', least: 1, most: 7 },
    usual: usualProgramme.weekdays.join(', '),
  },
  { path: 'weekends', label: 'Weekends are worked', kind: { of: 'yes-no' } },
  { path: 'nights', label: 'Nights are worked too: round the clock, in shifts', kind: { of: 'yes-no' } },
  {
    path: 'visitGap',
    label: 'The crew leaves when it waits',
    unit: 'h',
    kind: hours,
    usual: String(usualProgramme.visitGap),
  },
  { path: 'climate.temperature', label: 'Air', unit: '°C', kind: degrees, usual: '20' },
  { path: 'climate.humidity', label: 'Humidity', unit: '%', kind: percent, usual: '50' },
  { path: 'climate.surface', label: 'Face of the wall', unit: '°C', kind: degrees, usual: 'as the air' },
  {
    path: 'slowing.factor',
    label: 'Cool or humid: drying times',
    unit: '×',
    kind: { of: 'number', least: 1, most: 20 },
    usual: String(usualSlowing.factor),
  },
  {
    path: 'inspection',
    label: 'Inspection',
    unit: 'h',
    kind: hours,
    usual: String(usualProgramme.inspection),
  },
  { path: 'snags', label: 'Snags', unit: 'h', kind: hours, usual: String(usualProgramme.snags) },
  { path: 'holidays', label: 'Holidays, as 2026-12-25; part by commas', kind: { of: 'days' }, usual: 'none' },
];
