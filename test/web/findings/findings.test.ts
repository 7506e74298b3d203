import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../core/finding';
import { emptyJob, newFitting, newWall, newZone } from '../../../core/job/defaults';
import { OpenJob } from '../../../web/job/open-job.svelte';
import { placeOfFinding, showFinding } from '../../../web/findings/finding-place';
import { proofText } from '../../../core/drawings/proof-text';
import { countFindings, isCaution, sortFindings } from '../../../web/findings/station-findings';

const finding = (level: Finding['level'], wall?: string, object?: string): Finding => ({
  level,
  code: 'a-code',
  text: `${level} ${wall ?? ''} ${object ?? ''}`,
  ...(wall !== undefined && { wall }),
  ...(object !== undefined && { object }),
});

function jobOfTwoWalls() {
  const empty = emptyJob('Studio');
  const a = newWall('A', '', 4200, 2600);
  const b = newWall('B', '', 3000, 2600);
  const fittings = [newFitting(b, 'socket', { x: 500 })];
  const zones = [newZone(empty, b, { x: 500, y: 900, width: 1000, height: 1000 })];
  return { ...empty, walls: [a, { ...b, fittings, zones }] };
}

describe('what a finding leads to', () => {
  const job = jobOfTwoWalls();

  it.each([
    [finding('note', 'B', 'K1'), { kind: 'fitting', id: 'K1' }],
    [finding('note', 'B', 'Z1'), { kind: 'zone', id: 'Z1' }],
    [finding('note', 'B', 'B-Z1-03'), { kind: 'panel', id: 'B-Z1-03' }],
    [finding('note', 'B', '2'), { kind: 'vertex', id: '2' }],
    [finding('note', 'B'), null],
  ])('%#', (about, selection) => {
    expect(placeOfFinding(about, job)).toMatchObject({ wallId: 'B', selection });
  });

  it('is nothing for a finding about the whole job or about a wall that is gone', () => {
    expect(placeOfFinding(finding('note'), job)).toBeNull();
    expect(placeOfFinding(finding('note', 'C', 'K1'), job)).toBeNull();
  });

  it('goes to the wall, selects the object and shows it where it can be seen', () => {
    const open = new OpenJob(job);
    open.station = 'drawings';
    showFinding(open, finding('warning', 'B', 'K1'));
    expect(open.wall?.id).toBe('B');
    expect(open.selection).toEqual({ kind: 'fitting', id: 'K1' });
    expect(open.station).toBe('survey');
    showFinding(open, finding('warning', 'B', 'B-Z1-03'));
    expect(open.station).toBe('panels');
  });
});

describe('the list of findings', () => {
  it('has the gravest first, and among equals those of this wall', () => {
    const sorted = sortFindings(
      [finding('note', 'A'), finding('warning', 'B'), finding('warning', 'A'), finding('error')],
      'A',
    );
    expect(sorted.map(({ level, wall }) => `${level} ${wall ?? 'job'}`)).toEqual([
      'error job',
      'warning A',
      'warning B',
      'note A',
    ]);
  });

  it('counts what holds for the whole job apart, as cautions', () => {
    expect(countFindings([finding('note'), finding('note')])).toBe('No warnings, 2 cautions');
    expect([finding('note'), finding('note', 'A'), finding('warning')].map(isCaution)).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('is counted in words', () => {
    expect(countFindings([finding('warning'), finding('warning'), finding('note', 'A')])).toBe(
      '2 warnings, 1 note',
    );
    expect(countFindings([finding('error'), finding('note')])).toBe('1 fault, 1 caution');
    expect(countFindings([])).toBe('Nothing to mend');
  });
});

describe('the proof under the number of stock sheets', () => {
  const cutting = { newSheets: 14, lowerBound: 14, cost: 100, costLowerBound: 100, leastPossible: true };
  const proof = (patch: Partial<typeof cutting>) =>
    proofText({ cutting: { ...cutting, ...patch, sheets: [], order: [] } });

  it('claims the least possible only where the plan reaches its bound', () => {
    expect(proof({})).toBe('14 stock sheets: no plan needs fewer.');
    expect(proof({ leastPossible: false, lowerBound: 13 })).toBe(
      '14 stock sheets: at least 13 are needed, a better plan may still be found.',
    );
  });

  it('speaks of cost where stock sheets of several prices are mixed', () => {
    expect(proof({ lowerBound: 13 })).toBe('14 stock sheets: no plan costs less.');
    expect(proof({ leastPossible: false, costLowerBound: 90 })).toBe(
      '14 stock sheets: no plan needs fewer, but other stock sheets could cost less.',
    );
  });
});
