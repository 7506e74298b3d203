/**
 * The temperature to which air must cool until its water condenses, °C.
 *
 * Magnus formula over water, with the constants of the WMO Guide to Meteorological Instruments and Methods of Observation
 * (WMO No. 8), annex 4.B, as quoted in a weather station's manual; other sets of constants differ by hundredths.
 *
 * @param T air temperature, °C, −45 to 60
 * @param U relative humidity, per cent, above 0
 * @example dewPoint(20, 50) // 9.26
 */
export function dewPoint(T: number, U: number): number {
  const g = Math.log(U / 100) + (17.62 * T) / (243.12 + T);
  return (243.12 * g) / (17.62 - g);
}

/**
 * A surface that is to be coated lies at least so much above the dew point, K (ISO 8502-4 and ISO 12944-7 in practice;
 * "3 °C unless otherwise agreed": from memory).
 */
export const leastAboveDewPoint = 3;
