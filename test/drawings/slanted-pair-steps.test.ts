import { expect, test } from 'vitest';
import { searchCutting } from '../../core/cutting/search';
import { cutSteps } from '../../core/drawings/cut-steps';

test('the cut between a slanted pair parts a piece; it does not open one of the two panels', () => {
  const panel = (mark: string, left: number, right: number) => ({
    mark,
    stock: ['S'],
    outline: {
      outer: [
        { x: 0, y: 0 },
        { x: 50000, y: 0 },
        { x: 50000, y: right },
        { x: 0, y: left },
      ],
      holes: [],
    },
  });
  const plan = searchCutting(
    {
      panels: [panel('A', 30000, 20000), panel('B', 25000, 15000)],
      stock: [{ id: 'S', width: 50000, height: 50000, price: 1, hasFace: false }],
      rack: [],
      method: 'edge-to-edge',
      kerf: 0,
      leastOffcut: [10000, 10000],
    },
    1,
  ).next().value!;
  expect(plan.newSheets).toBe(1);
  const steps = cutSteps({ ...plan.sheets[0]!, id: 'N1', delivery: '', pattern: 1 }, 'edge-to-edge', 0);
  expect(steps).toMatchObject([
    { kind: 'part', direction: expect.stringMatching(/upright|level/) },
    { kind: 'part', direction: 'slanted' },
  ]);
});
