import { expect, it } from 'vitest';
import { fieldsOfJob } from '../../core/drawings/title-block';
import { chooseAlternative, copyAlternative } from '../../core/job/alternatives';
import { emptyJob } from '../../core/job/defaults';

it('names the alternative that is drawn in the title block, if the job has several', () => {
  const job = { ...emptyJob('Studio'), client: 'Quire & Daughters' };
  expect(fieldsOfJob(job).supplementaryTitle).toBe('Studio, Quire & Daughters');
  const two = copyAlternative(job, 'V1', 'Wider');
  expect(fieldsOfJob(two).supplementaryTitle).toBe('Studio, Alternative 1, Quire & Daughters');
  expect(fieldsOfJob(chooseAlternative(two, 'V2')).supplementaryTitle).toBe(
    'Studio, Wider, Quire & Daughters',
  );
});
