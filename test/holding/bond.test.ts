import { describe, expect, it } from 'vitest';
import { checkBond, magnetsOnPanel, type BondedPanel, type MagnetOnPanel } from '../../core/holding/bond';
import { flatItem } from '../../core/holding/item';
import { judgeItem } from '../../core/holding/judge-item';
import { disc } from '../../core/holding/magnet';
import { steelGround } from './grounds';

/** 1 m × 2 m of 0.5 mm steel, nothing else on it. */
const panel: BondedPanel = { area: 2e6, wetted: 1, massPerArea: 3.925, hung: 0 };
const strong = { shear: 1, peel: 3 };
const magnet: MagnetOnPanel = { diameter: 20, across: 20, clearance: 10, tension: 0.5, most: 20 };

describe('EN 1991-1-1 table A.4 with a density of 7850 kg/m³: steel of 0.5 mm weighs 3.925 kg/m², 38.5 N/m²', () => {
  it('and so does its bond, per m² and for a sheet of 1000 × 2000 mm (7.85 kg)', () => {
    const { weight, weightPerArea } = checkBond(panel, strong, []);
    expect(weightPerArea.toFixed(1)).toBe('38.5');
    expect((weight / 9.80665).toFixed(2)).toBe('7.85');
  });
});

describe('the bond of a panel', () => {
  it('bears its weight and what hangs on it over the wetted share, at a tenth of its strength', () => {
    const { shearUtilisation, weight } = checkBond({ ...panel, hung: 40, wetted: 0.5 }, strong, []);
    expect(weight).toBeCloseTo(7.85 * 9.80665 + 40, 9);
    expect(shearUtilisation).toBeCloseTo(weight / (2e6 * 0.5) / (0.1 * 1), 12);
  });

  it('holds, or does not, by shear', () => {
    expect(checkBond(panel, strong, []).verdict).toBe('holds');
    // 7.85 kg and 120 kg over 2 m², half wetted: 0.00125 N/mm² against a tenth of 0.01.
    const { verdict, reasons } = checkBond(
      { ...panel, wetted: 0.5, hung: 120 * 9.80665 },
      { shear: 0.01, peel: 3 },
      [],
    );
    expect(verdict).toBe('does not hold');
    expect(reasons.join(' ')).toContain('hang less');
  });

  it('peels by the magnets near its edge: T/D at a tenth of the strength, torn off Fmax/D at half', () => {
    const torn = checkBond(panel, strong, [magnet]);
    expect(torn.peelUtilisation).toBeCloseTo(20 / 20 / (0.5 * 3), 12);
    const heavy = checkBond(panel, strong, [{ ...magnet, tension: 5 }]);
    expect(heavy.peelUtilisation).toBeCloseTo(5 / 20 / (0.1 * 3), 12);
    expect(checkBond(panel, { shear: 1, peel: 1 }, [magnet]).verdict).toBe('does not hold');
  });

  it('does not peel by a magnet 1.5 diameters in; one of which the place is not known counts as near', () => {
    expect(checkBond(panel, strong, [{ ...magnet, clearance: 30 }]).peelUtilisation).toBe(0);
    expect(checkBond(panel, strong, [{ ...magnet, clearance: 29 }]).peelUtilisation).toBeGreaterThan(0);
    const { clearance: _clearance, ...somewhere } = magnet;
    expect(checkBond(panel, strong, [somewhere]).peelUtilisation).toBeGreaterThan(0);
  });

  it('counts edges from the longer side of a block, and bears its pull on the shorter', () => {
    const block = { ...magnet, across: 60 };
    expect(checkBond(panel, strong, [{ ...block, clearance: 90 }]).peelUtilisation).toBe(0);
    const near = checkBond(panel, strong, [{ ...block, clearance: 89 }]);
    expect(near.peelUtilisation).toBeCloseTo(20 / 20 / (0.5 * 3), 12);
  });

  it('cannot be judged without the stated strength that it needs', () => {
    expect(checkBond(panel, {}, []).verdict).toBe('cannot be judged');
    expect(checkBond(panel, { shear: 1 }, [magnet]).verdict).toBe('cannot be judged');
    expect(checkBond(panel, { shear: 1 }, [magnet]).reasons.join(' ')).toContain(
      'peel strength is not stated',
    );
    expect(checkBond(panel, { shear: 1 }, []).verdict).toBe('holds');
    // What is known to fail fails, whatever else is not stated.
    expect(checkBond(panel, { peel: 0.1 }, [magnet]).verdict).toBe('does not hold');
  });

  it('takes tension, clearance and the most that a magnet pulls from a judgement', () => {
    const magnets = [20, 120].map((y) => ({ magnet: disc('N42', 20, 5), x: 0, y, ground: steelGround() }));
    const places = { magnets, consequence: 'light-at-reach' as const };
    const judgement = judgeItem(flatItem(1, 50, { x: 0, y: 60 }, places));
    const [top] = magnetsOnPanel(judgement, [1]);
    // M y / Σy² = 50 · 120 / (20² + 120²)
    expect(top!.tension).toBeCloseTo((50 * 120) / (400 + 14400), 9);
    expect(top!.most).toBeGreaterThan(judgement.magnets[1]!.pull.nominal);
    expect(top!.clearance).toBeUndefined();
    expect(top!.across).toBe(20);
  });

  it.each([
    [{ ...panel, area: 0 }, strong, [], 'no area'],
    [{ ...panel, wetted: 1.2 }, strong, [], 'wetted'],
    [{ ...panel, hung: NaN }, strong, [], 'weight'],
    [panel, { shear: 0, peel: 1 }, [], 'strength'],
    [panel, strong, [{ ...magnet, most: NaN }], 'magnet'],
  ])('cannot be judged from figures that are none (%#)', (bonded, adhesive, magnets, words) => {
    const { verdict, reasons } = checkBond(bonded, adhesive, magnets);
    expect(verdict).toBe('cannot be judged');
    expect(reasons.join(' ')).toContain(words);
  });

  it('writes every line with a source', () => {
    const { lines } = checkBond(panel, strong, [magnet]);
    expect(lines.map(({ symbol }) => symbol)).toContain('G/A');
    for (const line of lines) expect(line.source && line.words && Number.isFinite(line.value)).toBe(true);
  });
});
