import { changeJob } from '../../../core/job/changes';
import { lengthUnits, type LengthUnits } from '../../../core/lengths';
import type { Job } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

type Detail = 'name' | 'client' | 'reference' | 'revision' | 'date' | 'currency';

const detailWords: Readonly<Record<Detail, string>> = {
  name: 'Rename the job',
  client: 'Set client',
  reference: 'Set reference',
  revision: 'Set revision',
  date: 'Set date',
  currency: 'Set currency',
};

const unitNames: Readonly<Record<LengthUnits, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  'ft-in': 'feet and inches',
};

export const unitChoices = lengthUnits.map((value) => ({ value, label: unitNames[value] }));

/** Changes no length: only what all of them are shown and typed in. Millimetres are left out of the file. */
export function setUnits(units: LengthUnits): NamedChange {
  return {
    name: `Show lengths in ${unitNames[units]}`,
    change: (job) => {
      if ((job.units ?? 'mm') === units) return job;
      const { units: _units, ...rest } = job;
      return units === 'mm' ? rest : changeJob(job, { units });
    },
  };
}

export function setDetail(detail: Detail, value: string): NamedChange {
  return {
    name: detailWords[detail],
    change: (job: Job) => (job[detail] === value ? job : changeJob(job, { [detail]: value })),
  };
}
