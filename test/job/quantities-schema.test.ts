import { describe, expect, it } from 'vitest';
import { readJobObject } from '../../core/job/read';

const file = (fields: object) => ({ format: 'lodeplan-job', version: 1, name: 'Test', ...fields });
const faultsOf = (quantities: object) => readJobObject(file({ quantities })).findings.map(({ text }) => text);

describe('what quantities are counted by, in a job file', () => {
  it('may be absent, empty or hold fields that nobody knows', () => {
    expect(readJobObject(file({})).job!.quantities).toBeUndefined();
    expect(readJobObject(file({ quantities: {} })).job!.quantities).toEqual({});
    expect(readJobObject(file({ quantities: { note: 'as agreed' } })).job!.quantities).toEqual({
      note: 'as agreed',
    });
  });

  it('has its prices, and those of products, rounded to the minor unit on reading', () => {
    const { job } = readJobObject(
      file({
        products: [
          { id: 'p', name: 'Paint', layer: 'decorative', unit: 'l', packs: [{ size: 5, price: 40.005 }] },
        ],
        quantities: {
          sundries: [{ id: 's', name: 'Tape', per: 'edge', amount: 1, packs: [{ size: 50, price: 3.999 }] }],
        },
      }),
    );
    expect(job!.products![0]!.packs[0]!.price).toBe(40.01);
    expect(job!.quantities!.sundries![0]!.packs[0]!.price).toBe(4);
  });

  it('is refused with what, where and how to mend it', () => {
    expect(faultsOf({ hands: 0 })[0]).toMatch(/^quantities\.hands /);
    expect(faultsOf({ measurement: 'by eye' })[0]).toMatch(/^quantities\.measurement /);
    const twice = { id: 's', name: 'Tape', per: 'edge', amount: 1 };
    expect(faultsOf({ sundries: [twice, twice] })[0]).toContain('sundries');
  });
});
