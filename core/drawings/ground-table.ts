import { adhesionInWords, moistureInWords, spelt } from '../job/differences/ground';
import type { Ground } from '../job/ground-schema';
import type { Wall } from '../job/schema';
import { groundBlanks, type GroundField } from '../survey/ground-blanks';
import type { Schedule } from './deal-tables';
import type { PaperFigures } from './paper-figures';

/**
 * The ground as it was found: what is recorded of it, and as `not recorded` what is blank although what is planned
 * depends on it. No rows where neither is the case.
 */
export function groundSchedule(wall: Wall, figures: PaperFigures): Schedule {
  const blanks = new Set<GroundField>(groundBlanks(wall).map(({ field }) => field));
  const rows = wordsOfGround(wall.ground ?? {}, figures).flatMap(([field, label, said]) =>
    said || blanks.has(field as GroundField) ? [[label, said || 'not recorded'] as const] : [],
  );
  return {
    heading: 'Ground',
    columns: [
      { heading: 'What', align: 'left' },
      { heading: 'as found', align: 'left', most: 70 },
    ],
    rows: rows.map(([label, said]) => ({ kind: 'row', cells: [label, said] })),
  };
}

function wordsOfGround(
  ground: Ground,
  { words }: PaperFigures,
): (readonly [field: keyof Ground, label: string, said: string])[] {
  const { material, age, state, hollow, suction, suctionTest, moisture, adhesion, exposure } = ground;
  const { escapeRoute, fire } = ground;
  const both = (...parts: readonly (string | undefined)[]) => parts.filter(Boolean).join(', ');
  return [
    ['material', 'made of', material ? spelt(material) : ''],
    ['state', 'coating', both(age, state)],
    ['hollow', 'deepest hollow under 2 m', hollow === undefined ? '' : words(hollow)],
    ['suction', 'suction', both(suction, suctionTest)],
    ['moisture', 'moisture', moisture ? withComma(moistureInWords(moisture)) : ''],
    ['adhesion', 'adhesion of the old coating', adhesion ? withComma(adhesionInWords(adhesion)) : ''],
    ['exposure', 'exposure', exposure ? spelt(exposure) : ''],
    ['escapeRoute', 'on an escape route', escapeRoute === undefined ? '' : escapeRoute ? 'yes' : 'no'],
    ['fire', 'reaction to fire required, EN 13501-1', fire ?? ''],
  ];
}

function withComma(words: string): string {
  return words.replace(/(?<=\d)\.(?=\d)/g, ',');
}
