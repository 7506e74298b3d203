import { describe, expect, it } from 'vitest';
import { theoreticalSpreadingRate, trowelled, wetFilm, withLoss } from '../../core/quantities/spreading';

/** One mil, and a square foot and a US gallon, in µm, m² and l; international yard and pound, 231 cubic inches. */
const mil = 25.4;
const squareFoot = 0.3048 ** 2;
const gallon = 3.785411784;
const perGallon = (rate: number) => (rate * gallon) / squareFoot;

describe('theoretical spreading rate, TSR = VS · 10 / DFT', () => {
  it('is 5.2 m²/l at 65 % and 125 µm, 208.52 ft²/gal at 5 mil (published worked example)', () => {
    expect(theoreticalSpreadingRate(65, 125)).toBeCloseTo(5.2, 10);
    expect(perGallon(theoreticalSpreadingRate(65, 5 * mil))).toBeCloseTo(208.52, 1);
  });

  it('is 561 and 281 ft²/gal at 35 %, 1 and 2 mil (published table)', () => {
    expect(Math.round(perGallon(theoreticalSpreadingRate(35, mil)))).toBe(561);
    expect(Math.round(perGallon(theoreticalSpreadingRate(35, 2 * mil)))).toBe(281);
  });

  it.each([
    [100, [40, 20, 13.3, 10, 8, 6.7, 5]],
    [50, [20, 10, 6.7, 5, 4, 3.3, 2.5]],
    [40, [16, 8, 5.3, 4, 3.2, 2.7, 2]],
  ])('agrees with the published table for %s %% at 25 to 200 µm', (solids, rates) => {
    const films = [25, 50, 75, 100, 125, 150, 200];
    const figures = films.map((film) => Math.round(theoreticalSpreadingRate(solids, film) * 10) / 10);
    expect(figures).toEqual(rates);
  });

  it('is about 5.7 m²/l at 71 % and 125 µm (published example)', () => {
    expect(theoreticalSpreadingRate(71, 125)).toBeCloseTo(5.7, 1);
  });
});

describe('loss', () => {
  it('leaves 70 of 100 ft²/gal at 30 % (corrosion glossary)', () => {
    expect(1 / withLoss(1 / 100, 0.3)).toBeCloseTo(70, 10);
  });

  it('leaves 167 ft² of 1604 · 0.52 / 1.5 at a transfer of 30 % (pollution-prevention centre)', () => {
    expect(Math.round(1 / withLoss(1.5 / (1604 * 0.52), 0.7))).toBe(167);
  });

  it('divides the need by 1 − loss: 30 % asks for 1.4286 times as much, not for 1.30', () => {
    expect(withLoss(1, 0.3)).toBeCloseTo(1.4286, 4);
  });
});

describe('wet film (MIL-HDBK-1110, procedure 13: DFT = WFT · VS / 100)', () => {
  it('is 4 mil at 25 % for 1 mil dry, 192.3 µm at 65 % for 125 µm', () => {
    expect(wetFilm(1, 25)).toBeCloseTo(4, 10);
    expect(wetFilm(125, 65)).toBeCloseTo(192.3, 1);
  });

  it('grows with the thinner: DFT · (1 + thinner) / VS (published example)', () => {
    expect(wetFilm(100, 50, 0.1)).toBeCloseTo(220, 10);
  });
});

describe('notched trowel (letters: TKB Technical Briefing Note 6; volumes: geometry)', () => {
  const notch = (size: number, shape: 'square' | 'triangular', tilt?: number) =>
    trowelled({ shape, bridge: size, width: size, depth: size, ...(tilt !== undefined && { tilt }) });

  it('leaves 3.0 l/m² by 6/6/6 square and 1.5 by triangular notches, 4.0 by 8/8/8, 2.0 by 4/4/4', () => {
    expect(notch(6, 'square')).toBe(3);
    expect(notch(6, 'triangular')).toBe(1.5);
    expect(notch(8, 'square')).toBe(4);
    expect(notch(4, 'square')).toBe(2);
  });

  it('leaves 0.866 of it at 60°', () => {
    expect(notch(6, 'square', 60) / notch(6, 'square')).toBeCloseTo(0.866, 3);
  });
});
