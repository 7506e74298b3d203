import { expect, it } from 'vitest';
import { heightsInWords, usualHeights } from '../../../web/elevation/usual-heights';

/*
 * 2010 ADA Standards for Accessible Design, 308.2.1 (read): 15 in (380 mm) to 48 in (1220 mm), as the standard itself
 * rounds them. S. Pheasant, Bodyspace, 1996 (read in secondary pages): vertical grip reach of the 5th percentile of
 * women 71.1 in. AETM guidelines (read): lower edge of a writing area 850 to 900 mm.
 */
it('has the heights of its sources, each named', () => {
  const inches = (count: number) => count * 25.4;
  const [sitting, writing, standing] = usualHeights;
  expect(Math.abs(sitting!.from - inches(15))).toBeLessThanOrEqual(1);
  expect(Math.abs(sitting!.to - inches(48))).toBeLessThanOrEqual(1);
  expect([writing!.from, writing!.to]).toEqual([850, 900]);
  expect(Math.abs(standing!.to - inches(71.1))).toBeLessThanOrEqual(1);
  for (const { source } of usualHeights) expect(heightsInWords).toContain(source);
});
