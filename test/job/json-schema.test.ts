import { readFileSync, readdirSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { jobJsonSchema } from '../../core/job/json-schema';
import { readJobObject } from '../../core/job/read';
import { writeJob } from '../../core/job/write';
import { jobFile } from './random-job';

const published = JSON.parse(
  readFileSync(new URL('../../core/job/lodeplan-job.schema.json', import.meta.url), 'utf8'),
) as Record<string, unknown>;
const accepts = new Ajv2020({ strict: true, strictTuples: false, allErrors: false }).compile(published);

describe('the published JSON Schema of the job file', () => {
  it('is what `npm run schema` writes today', () => {
    expect(published).toEqual(jobJsonSchema());
  });

  it('names its draft and keeps fields it does not list', () => {
    expect(published.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(JSON.stringify(published)).not.toContain('"additionalProperties":false');
  });
});

describe('ajv, an independent validator, by the published schema', () => {
  it('accepts the demo job as a file and as it is written', () => {
    const file = JSON.parse(
      readFileSync(new URL('../../core/job/demo-job.json', import.meta.url), 'utf8'),
    ) as unknown;
    expect(accepts(file), JSON.stringify(accepts.errors)).toBe(true);
    expect(accepts(JSON.parse(writeJob(demoJob())))).toBe(true);
  });

  it('accepts every sound job', () => {
    fc.assert(
      fc.property(jobFile, (file) => {
        expect(accepts(file), JSON.stringify(accepts.errors)).toBe(true);
      }),
      { numRuns: 150, seed: 7 },
    );
  });

  const folder = new URL('../fixtures/job/refused/', import.meta.url);
  const refused = readdirSync(folder).filter((name) => name.endsWith('.json'));
  /** What no schema of this language can say: it stands in other places of the file, or between its points. */
  const beyondSchema =
    /^(unusable-id|unusable-kind|duplicate-id|ambiguous-mark|unknown-stock|unknown-wall|kerf-too-wide|too-many-panels|crosses-itself|repeated-point|flat-arc|no-such-day|no-such-time|no-working-time|too-long|no-shape|several-shapes)$/;

  it.each(refused)('agrees with readJob about %s', (name) => {
    const file = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as unknown;
    const { code } = readJobObject(file).findings[0]!;
    const rectangleLacksSide = name === 'width-missing.json';
    expect(accepts(file)).toBe(beyondSchema.test(code) || rectangleLacksSide);
  });
});
