import { describe, expect, it } from 'vitest';
import { hatch } from '../../core/drawings/hatch';

const square = (left: number, bottom: number, side: number) => [
  { x: left, y: bottom },
  { x: left + side, y: bottom },
  { x: left + side, y: bottom + side },
  { x: left, y: bottom + side },
];

const style = { spacing: 0.1, angle: 45, width: 0.18, colour: 'ink' } as const;

/** Lines of length L at distance d cover the area L·d, the more exactly the closer they are. */
const covered = (rings: Parameters<typeof hatch>[0]) =>
  hatch(rings, style).reduce(
    (sum, { points: [a, b] }) => sum + Math.hypot(b!.x - a!.x, b!.y - a!.y) * style.spacing,
    0,
  );

describe('hatch lines', () => {
  it('cover the area they stand for', () => {
    expect(covered([square(3, 7, 40)])).toBeCloseTo(1600, -1);
  });

  it('leave a hole free', () => {
    expect(covered([square(0, 0, 40), square(10, 10, 20)])).toBeCloseTo(1200, -1);
  });

  it('have a middle inside the shape each', () => {
    for (const {
      points: [a, b],
    } of hatch([square(0, 0, 40), square(10, 10, 20)], { ...style, spacing: 2.5 })) {
      const x = (a!.x + b!.x) / 2;
      const y = (a!.y + b!.y) / 2;
      expect(x > 0 && x < 40 && y > 0 && y < 40 && !(x > 10 && x < 30 && y > 10 && y < 30)).toBe(true);
    }
  });

  it('are none for no rings', () => {
    expect(hatch([], style)).toEqual([]);
  });
});
