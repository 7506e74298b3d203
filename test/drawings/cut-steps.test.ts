import { describe, expect, it } from 'vitest';
import type { Cut } from '../../core/cutting/plan';
import { cutSteps } from '../../core/drawings/cut-steps';
import type { JobSheet } from '../../core/worked-out';

function sheetWith(cuts: readonly Cut[]): JobSheet {
  return {
    id: 'N1',
    stock: 'S1',
    delivery: '',
    pattern: 1,
    fromRack: null,
    width: 100000,
    height: 50000,
    placements: [],
    offcuts: [],
    cuts,
  };
}

const cut = (x1: number, y1: number, x2: number, y2: number, opens?: string): Cut => ({
  from: { x: x1, y: y1 },
  to: { x: x2, y: y2 },
  ...(opens !== undefined && { opens }),
});

describe('cutSteps', () => {
  it('measures a second cut from the edge of the piece in hand as well', () => {
    const sheet = sheetWith([cut(60000, 0, 60000, 50000), cut(75000, 0, 75000, 50000)]);
    expect(cutSteps(sheet, 'edge-to-edge', 0)).toMatchObject([
      { number: 1, direction: 'upright', fromEdge: 60000, onPiece: null },
      { number: 2, direction: 'upright', fromEdge: 75000, onPiece: 15000 },
    ]);
  });

  it('takes the kerf off the piece on the far side of the first cut', () => {
    const sheet = sheetWith([cut(60000, 0, 60000, 50000), cut(75000, 0, 75000, 50000)]);
    expect(cutSteps(sheet, 'edge-to-edge', 300)[1]).toMatchObject({ fromEdge: 75000, onPiece: 14700 });
  });

  it('keeps to the piece that a cut runs through', () => {
    const sheet = sheetWith([
      cut(60000, 0, 60000, 50000),
      cut(0, 20000, 60000, 20000),
      cut(60000, 30000, 100000, 30000),
      cut(0, 35000, 60000, 35000),
    ]);
    expect(cutSteps(sheet, 'edge-to-edge', 0).map((step) => step.kind === 'part' && step.onPiece)).toEqual([
      null,
      null,
      null,
      15000,
    ]);
  });

  it('does not speak of a piece in hand where cuts need not run right across', () => {
    const sheet = sheetWith([cut(60000, 0, 60000, 50000), cut(75000, 0, 75000, 50000)]);
    expect(cutSteps(sheet, 'free', 0)).toMatchObject([{ onPiece: null }, { onPiece: null }]);
  });

  it('makes one step of all cuts that open one panel', () => {
    const steps = cutSteps(
      sheetWith([
        cut(60000, 0, 60000, 50000),
        cut(10000, 0, 10000, 5000, 'A-Z1-02'),
        cut(10000, 5000, 20000, 5000, 'A-Z1-02'),
        cut(70000, 0, 70000, 5000, 'A-Z1-03'),
        cut(20000, 5000, 20000, 0, 'A-Z1-02'),
      ]),
      'edge-to-edge',
      0,
    );
    expect(steps.map(({ kind, number }) => [kind, number])).toEqual([
      ['part', 1],
      ['open', 2],
      ['open', 3],
    ]);
    expect(steps[1]).toMatchObject({ panel: 'A-Z1-02', lines: { length: 3 } });
  });

  it('finds the panel whose notch a free cut opens', () => {
    const outer = [
      { x: 0, y: 0 },
      { x: 10000, y: 0 },
      { x: 10000, y: 5000 },
      { x: 20000, y: 5000 },
      { x: 20000, y: 0 },
      { x: 60000, y: 0 },
      { x: 60000, y: 50000 },
      { x: 0, y: 50000 },
    ];
    const placement = {
      mark: 'A-Z1-02',
      outline: { outer, holes: [] },
      quarterTurns: 0,
      turnedOver: false,
    } as const;
    const sheet = {
      ...sheetWith([cut(60000, 0, 60000, 50000), cut(10000, 5000, 20000, 5000), cut(10000, 0, 10000, 5000)]),
      placements: [placement],
    };
    expect(cutSteps(sheet, 'free', 0)).toMatchObject([
      { kind: 'part', fromEdge: 60000 },
      { kind: 'open', panel: 'A-Z1-02', lines: { length: 2 } },
    ]);
  });
});
