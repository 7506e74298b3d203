import { describe, expect, it } from 'vitest';
import { findingsOfWays } from '../../../web/budget/findings-of-ways';
import { buildUpFor, readBudget, type BudgetFields } from '../../../web/budget/read-budget';

const fields: BudgetFields = {
  width: '4200',
  height: '2600',
  surface: 'writable',
  ways: ['steel-panel', 'magnetic-coating', 'magnetic-film'],
  material: '',
  exposure: '',
  access: false,
  start: '',
  client: ' Hand press club ',
  name: '',
};
const read = (patch: Partial<BudgetFields>) => readBudget({ ...fields, ...patch }, '2026-11-28');

describe('what is asked on the telephone', () => {
  it('is read with every way in its surface', () => {
    expect(read({})).toEqual({
      buildUps: ['steel-panel-writable', 'magnetic-coating-writable', 'magnetic-film-writable'],
      request: {
        name: '',
        client: 'Hand press club',
        width: 4200,
        height: 2600,
        access: false,
        date: '2026-11-28',
        ground: {},
      },
    });
    expect(read({ material: 'brick', exposure: 'damp', start: '2026-12-07' })).toMatchObject({
      request: { ground: { material: 'brick', exposure: 'damp' }, start: '2026-12-07' },
    });
  });

  it('takes feet and inches in a job in mm', () => {
    expect(read({ width: "14'", height: '8\' 6"' })).toMatchObject({
      request: { width: 4267.2, height: 2590.8 },
    });
  });

  it.each([
    [{ width: '' }, 'width', ''],
    [{ width: 'wide' }, 'width', 'Width: Type a size above 0'],
    [{ height: '-3' }, 'height', 'Height: Type a size above 0'],
    [{ height: '2,600' }, 'height', 'Height: 2,600 could be 2600 or 2.6'],
    [{ width: '900000' }, 'width', 'Width: a wall is at most'],
    [{ ways: [] }, 'ways', 'Choose at least one way'],
    [{ ways: ['none'], surface: 'plain' }, 'ways', 'has to be written on'],
    [{ start: 'soon' }, 'start', 'Work begins on: Type the day'],
  ] as const)('says of %j what is wrong with it', (patch, field, words) => {
    const fault = read(patch);
    expect(fault).toMatchObject({ field });
    expect((fault as { fault: string }).fault).toContain(words);
    expect((fault as { fault: string }).fault.split('. ')).toHaveLength(1);
  });

  it('knows a build-up of every way and surface but for a bare wall that is only looked at', () => {
    const of = (surface: BudgetFields['surface']) =>
      (['steel-panel', 'magnetic-coating', 'magnetic-film', 'none'] as const).map((way) =>
        buildUpFor(way, surface),
      );
    expect(of('plain')).toEqual(['steel-panel', 'magnetic-coating', 'magnetic-film', null]);
    expect(of('writable')[3]).toBe('writable');
    expect(of('chalk')).toEqual([
      'steel-panel-chalk',
      'magnetic-coating-chalk',
      'magnetic-film-chalk',
      'chalk',
    ]);
  });
});

it('says what several ways have in common once, and of which ways the rest is true', () => {
  const warning = (text: string) => ({ level: 'warning' as const, code: 'any', text });
  expect(
    findingsOfWays([
      { title: 'Steel', findings: [warning('Both.'), warning('Heavy.')] },
      { title: 'Film', findings: [warning('Both.'), { ...warning('Known.'), code: 'not-surveyed' }] },
    ]),
  ).toEqual(['Both.', 'Steel: Heavy.']);
});
