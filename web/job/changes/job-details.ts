import { changeJob } from '../../../core/job/changes';
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

export function setDetail(detail: Detail, value: string): NamedChange {
  return {
    name: detailWords[detail],
    change: (job: Job) => (job[detail] === value ? job : changeJob(job, { [detail]: value })),
  };
}
