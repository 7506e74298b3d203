import type { Finding } from '../finding';
import type { Product } from '../job/product-schema';
import { dewPoint, leastAboveDewPoint } from './dew-point';
import { isSlowed } from './drying';
import type { Settings } from './settings';

/**
 * What the climate of the room means for the products that are used in it: too cold, too humid, wet from condensation, slow
 * to dry. None where the climate is not given.
 */
export function climateFindings(products: readonly Product[], settings: Settings): Finding[] {
  const { temperature, humidity, surface = temperature } = settings.climate;
  const wet = products.filter(({ layer }) => layer !== 'degreasing');
  const slowed = products.filter((product) => isSlowed(product, settings));
  return [
    ...(wet.length > 0 ? dewFindings(temperature, humidity, surface) : []),
    ...products.flatMap((product) => limitFindings(product, { temperature, humidity, surface })),
    ...(slowed.length > 0 && settings.slowing.factor !== 1 ? [slowedFinding(slowed, settings)] : []),
  ];
}

function dewFindings(
  temperature: number | undefined,
  humidity: number | undefined,
  surface: number | undefined,
): Finding[] {
  if (temperature === undefined || humidity === undefined || surface === undefined) return [];
  const dew = dewPoint(temperature, humidity);
  if (surface >= dew + leastAboveDewPoint) return [];
  return [
    {
      level: 'warning',
      code: 'near-dew-point',
      text:
        `The wall is ${degrees(surface)} and dew forms at ${degrees(dew)}: a surface to be coated lies at least ` +
        `${leastAboveDewPoint} K above; warm the wall or dry the air before anything is coated.`,
    },
  ];
}

function limitFindings(
  { name, temperatureLeast, humidityMost }: Product,
  climate: Settings['climate'],
): Finding[] {
  const { temperature = Infinity, surface = Infinity, humidity = 0 } = climate;
  const coldest = Math.min(temperature, surface);
  const findings: Finding[] = [];
  if (temperatureLeast !== undefined && coldest < temperatureLeast) {
    const where = surface < temperature ? 'the wall' : 'the room';
    findings.push({
      level: 'warning',
      code: 'too-cold-to-coat',
      text: `${name} wants at least ${degrees(temperatureLeast)}, but ${where} is ${degrees(coldest)}: heat it, or choose another product.`,
    });
  }
  if (humidityMost !== undefined && humidity > humidityMost) {
    findings.push({
      level: 'warning',
      code: 'too-humid-to-coat',
      text: `${name} wants at most ${figure(humidityMost)} % relative humidity, but the room has ${figure(humidity)} %: dry the air, or choose another product.`,
    });
  }
  return findings;
}

function slowedFinding(products: readonly Product[], { slowing }: Settings): Finding {
  const names = products.map(({ name }) => name);
  const listed = names.length > 3 ? `${names.slice(0, 3).join(', ')} and more` : names.join(', ');
  return {
    level: 'note',
    code: 'drying-slowed',
    text:
      `It is cooler than ${degrees(slowing.below)} or more humid than ${figure(slowing.above)} %: the programme gives ` +
      `${listed} ${figure(slowing.factor)} times as long to dry. That factor is an assumption; ask the maker.`,
  };
}

function degrees(value: number): string {
  return `${figure(value)} °C`;
}

function figure(value: number): string {
  return String(Math.round(value * 10) / 10).replace('-', '−');
}
