import { describe, expect, it } from 'vitest';
import type { StartCandidate } from '../../../core/panels/panel';
import { choiceOf, startInWords, startOfChoice, tradeInWords } from '../../../web/schedule/starts';

const best: StartCandidate = {
  start: { x: 142_000, y: 70_000 },
  slivers: 0,
  nearCorners: 0,
  stockSheets: 14,
  cutPanels: 6,
  cutLength: 300_000,
  panels: 16,
  asymmetry: 0,
};

describe('a start in words', () => {
  it('says what it leads to', () => {
    expect(startInWords(best)).toBe('14 stock sheets, 6 of 16 panels cut, no slivers, symmetrical');
    expect(startInWords({ ...best, stockSheets: 1, slivers: 2, asymmetry: 500 })).toBe(
      '1 stock sheet, 6 of 16 panels cut, 2 slivers, not symmetrical',
    );
    expect(startInWords({ ...best, nearCorners: 2 })).toBe(
      '14 stock sheets, 6 of 16 panels cut, no slivers, 2 joints where the wall cracks, symmetrical',
    );
  });

  it.each([
    [{}, 'no difference but its place'],
    [{ stockSheets: 15 }, '1 stock sheet more'],
    [{ cutPanels: 10, panels: 20 }, '4 cut panels more, 4 panels more'],
    [{ stockSheets: 15, cutPanels: 4 }, '1 stock sheet more, but 2 cut panels fewer'],
    [{ stockSheets: 13, nearCorners: 1 }, '1 joint where the wall cracks more, but 1 stock sheet fewer'],
    [{ asymmetry: 100 }, 'less even'],
  ])('weighs another against it: %j', (patch, words) => {
    expect(tradeInWords(best, { ...best, ...patch })).toBe(words);
  });
});

describe('the choice of a start', () => {
  it('knows a name from a picked point', () => {
    expect(choiceOf('upper-left')).toBe('upper-left');
    expect(choiceOf({ x: 10, y: 20 })).toBe('picked');
  });

  it('begins a picked point where the panels start now, in mm', () => {
    expect(startOfChoice('picked', best)).toEqual({ x: 1420, y: 700 });
    expect(startOfChoice('best', best)).toBe('best');
  });
});
