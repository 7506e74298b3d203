/** Papers that one prints on. */
export const papers = ['A4', 'A3', 'Letter'] as const;
export type Paper = (typeof papers)[number];

/**
 * Width and height upright, mm: A4 and A3 of ISO 216:2007, Letter 8.5 × 11 inches of ANSI/ASME Y14.1 (size A; from
 * memory).
 */
export const paperSizes: Readonly<Record<Paper, readonly [number, number]>> = {
  A4: [210, 297],
  A3: [297, 420],
  Letter: [215.9, 279.4],
};
