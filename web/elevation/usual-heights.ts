/** A height, or a band of heights, at which people use a wall; mm above the finished floor. */
export interface UsualHeight {
  readonly name: string;
  /** The same as `to` for a single height. */
  readonly from: number;
  readonly to: number;
  readonly source: string;
}

/** To design by, never to build by: local codes on access come first. */
export const usualHeights: readonly UsualHeight[] = [
  {
    name: 'reach, sitting',
    from: 380,
    to: 1220,
    source: '2010 ADA Standards, 308.2.1',
  },
  {
    name: 'foot of a writing area',
    from: 850,
    to: 900,
    source: 'AETM guidelines, writing surfaces',
  },
  {
    name: 'reach, standing, up to',
    from: 1805,
    to: 1805,
    // 71.1 in, read in secondary pages.
    source: 'Pheasant, Bodyspace, 1996 (19 women in 20)',
  },
];

export const heightsInWords = `Heights by ${usualHeights.map(({ source }) => source).join('; ')}. Local codes come first.`;
