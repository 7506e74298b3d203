import { describe, expect, it } from 'vitest';
import type { Product } from '../../core/job/product-schema';
import { climateFindings } from '../../core/programme/climate-findings';
import { dewPoint, leastAboveDewPoint } from '../../core/programme/dew-point';
import { settingsOf } from '../../core/programme/settings';
import { jobOf, productOf } from './small-zone';

describe('dew point: values of a university dew-point page and of makers’ notes, in public test files', () => {
  it.each([
    [20, 25, -0.64],
    [20, 50, 9.26],
    [20, 75, 15.43],
    [0, 50, -9.2],
    [25, 10, -8.77],
    [25, 50, 13.85],
    [50, 90, 47.9],
  ])('of air at %f °C and %f %% is %f °C', (temperature, humidity, dew) => {
    expect(Math.abs(dewPoint(temperature, humidity) - dew)).toBeLessThan(0.05);
  });

  it('is the temperature of the air where it is saturated', () => {
    for (const temperature of [-20, 0, 35]) expect(dewPoint(temperature, 100)).toBeCloseTo(temperature, 9);
  });
});

const findingsAt = (
  temperature: number,
  humidity: number,
  surface: number,
  products: readonly Product[] = [productOf({})],
) => climateFindings(products, settingsOf(jobOf({ climate: { temperature, humidity, surface } })));
const codes = (...args: Parameters<typeof findingsAt>) => findingsAt(...args).map(({ code }) => code);

describe('three kelvin above the dew point (ISO 8502-4, ISO 12944-7 in practice)', () => {
  it('a coating bulletin: dew point 11, surface 13: do not paint', () => {
    expect(Math.round(dewPoint(16, 71))).toBe(11);
    expect(codes(16, 71, 13)).toContain('near-dew-point');
  });

  it('the same: dew point 15, surface 19, four above: acceptable', () => {
    // The humidity at which air of 21 °C has that dew point.
    const humidity = 68.5;
    expect(Math.round(dewPoint(21, humidity))).toBe(15);
    expect(codes(21, humidity, 19)).not.toContain('near-dew-point');
  });

  it.each([
    [20, 82.9],
    [10, 81.6],
    [25, 83.5],
  ])(
    'fails for a wall as warm as air of %f °C above %f %% (worked out from the formula)',
    (degrees, limit) => {
      expect(codes(degrees, limit - 0.2, degrees)).not.toContain('near-dew-point');
      expect(codes(degrees, limit + 0.2, degrees)).toContain('near-dew-point');
      expect(leastAboveDewPoint).toBe(3);
    },
  );
});

describe('limits of products', () => {
  const product = productOf({ name: 'Writable finish', temperatureLeast: 15, humidityMost: 70 });

  it('are held against air, wall and humidity, each in a sentence that says what to do', () => {
    expect(codes(18, 50, 18, [product])).toEqual([]);
    const cold = findingsAt(18, 50, 12, [product]).find(({ code }) => code === 'too-cold-to-coat');
    expect(cold?.text).toBe(
      'Writable finish wants at least 15 °C, but the wall is 12 °C: heat it, or choose another product.',
    );
    expect(codes(18, 71, 18, [product])).toContain('too-humid-to-coat');
    expect(codes(14, 50, 16, [product])).toContain('too-cold-to-coat');
  });

  it('say nothing where the climate is not given', () => {
    expect(climateFindings([product], settingsOf(jobOf({})))).toEqual([]);
  });
});
