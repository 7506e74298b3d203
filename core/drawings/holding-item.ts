import type { Advice } from '../holding/advice';
import type { HungCheck } from '../holding/check-hung';
import type { WallOfItems } from '../holding/held-item';
import { nameOfWall, sentence as capital } from '../job/names';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { heightOf, stack, type FlowBlock } from './flow-table';
import { listUnder, runInParagraph, smallHeading } from './holding-lists';
import { governingTable, magnetsTable, modesTable } from './holding-figures';
import { adviceWords, bondWords, comma, markOfItem } from './holding-words';
import { verdictBlocks } from './holding-verdict';
import { magnetSketch, whereSketch } from './hung-sketch';
import type { TextMeasure } from './page';
import { paperFigures, sentenceOnPaper } from './paper-figures';
import { placeSketch, type Sketch } from './sketch';

/** An item with all that its sheet says of it. */
export interface ItemOnSheet {
  readonly wall: WorkedWall;
  readonly on: WallOfItems;
  readonly check: HungCheck;
  readonly advice: readonly Advice[];
  /** Names of the pulls in the appendix that it goes by. */
  readonly pulls: readonly string[];
}

const betweenColumns: Mm = 6;
/** Heights of the sketches, the largest that leave the item one page are taken. */
const sketchHeights: readonly (readonly [magnets: Mm, where: Mm])[] = [
  [66, 46],
  [58, 44],
  [50, 42],
  [44, 38],
  [38, 34],
];

/**
 * One item: verdict; sketches, figures, why and what to change in two columns; what is taken for granted. As one block where it
 * fits `room`, else as blocks that run over pages, over the whole width.
 */
export function itemBlocks(
  item: ItemOnSheet,
  units: LengthUnits | undefined,
  width: Mm,
  room: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const top = verdictBlocks(item, units, width, measure);
  const foot = footOf(item, units, width, measure);
  const column = (width - betweenColumns) / 2;
  for (const heights of sketchHeights) {
    const body = besideEachOther(item, heights, units, column, measure);
    const all = [...top, body, ...foot];
    console.error(item.check.item.id, heights, top.map(b=>b.height), body.height, foot.map(b=>b.height), room);
    if (heightOf(all) <= room) return [oneBlock(all)];
  }
  const pair = sketchPair(item, units, column, measure);
  const { tables, lists } = partsOf(item, units, width, measure);
  return [...top, pair, ...tables, ...lists.flat(), ...foot];
}

/** Everything whose width can be chosen. */
function partsOf({ check, advice }: ItemOnSheet, units: LengthUnits | undefined, width: Mm, measure: TextMeasure) {
  const say = (text: string) => comma(sentenceOnPaper(text, units));
  const { verdict } = check;
  const list = (heading: string, sentences: readonly string[]) =>
    listUnder(heading, sentences, width, measure);
  return {
    tables: [
      ...magnetsTable(check, paperFigures(units), width, measure),
      ...modesTable(check, width, measure),
      ...governingTable(check, width, measure),
    ],
    lists: [
      list('Why', verdict.reasons.map(say)),
      list('What to change', advice.map((one) => say(adviceWords(one)))),
    ],
  };
}

/** What the engineer reads, over the whole width. */
function footOf(
  { wall, check, pulls }: ItemOnSheet,
  units: LengthUnits | undefined,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const say = (text: string) => comma(sentenceOnPaper(text, units));
  const figures = paperFigures(units);
  const { item: hung, verdict, result } = check;
  const { zones, panels } = verdict;
  const onZone =
    zones.length === 0
      ? ''
      : ` On zone ${zones.join(', ')}${panels.length > 0 ? `, ${panels.length > 1 ? 'panels' : 'panel'} ${panels.join(', ')}` : ''}.`;
  const where = `lower left corner ${figures.words(hung.x)} from the datum and ${figures.words(hung.y)} above it; ${figures.words(hung.width)} wide, ${figures.words(hung.height)} high.${onZone}`;
  const calculation = `in full under ${markOfItem(wall.survey.wall, hung)} at the end${pulls.length > 0 ? `, with pull ${pulls.join(' and ')}` : ''}.`;
  const runIn = (first: string, sentences: readonly string[]) =>
    runInParagraph(first, sentences, width, measure);
  return [
    { height: 3, at: () => [] },
    ...runIn(capital(nameOfWall(wall.survey.wall)), [where]),
    ...runIn('Taken for granted', check.assumptions.map(say)),
    ...runIn('Adhesive behind it', bondWords(check.bonds).map(comma)),
    ...runIn('Calculation', result?.lines.length ? [calculation] : []),
  ];
}

function besideEachOther(
  item: ItemOnSheet,
  [magnetsHeight, whereHeight]: readonly [Mm, Mm],
  units: LengthUnits | undefined,
  column: Mm,
  measure: TextMeasure,
): FlowBlock {
  const { check } = item;
  const { lists } = partsOf(item, units, column, measure);
  const left = [
    captioned('From the front', magnets(item, column, magnetsHeight, units, measure)),
    ...magnetsTable(check, paperFigures(units), column, measure),
  ];
  const right = [
    captioned('Where it hangs', where(item, column, whereHeight, units, measure)),
    ...modesTable(check, column, measure),
  ];
  for (const part of [governingTable(check, column, measure), ...lists])
    (heightOf(left) < heightOf(right) ? left : right).push(...part);
  return columnsBlock(left, right, column);
}

/** Both sketches side by side in one column. */
function sketchPair(
  item: ItemOnSheet,
  units: LengthUnits | undefined,
  column: Mm,
  measure: TextMeasure,
): FlowBlock {
  const first = magnets(item, column, 50, units, measure);
  const second = where(item, column, 42, units, measure);
  return {
    height: Math.max(first.height, second.height) + captionHeight,
    at: (left, top) => [
      ...captioned('From the front', first).at(left, top),
      ...captioned('Where it hangs', second).at(left + column + betweenColumns, top),
    ],
  };
}

const captionHeight: Mm = 6.4;

function captioned(words: string, sketch: Sketch): FlowBlock {
  const heading = smallHeading(words);
  return {
    height: sketch.height + captionHeight,
    at: (left, top) => [
      ...heading.at(left, top),
      ...placeSketch(sketch, left, top - heading.height),
    ],
  };
}

function magnets(
  { on, check: { item } }: ItemOnSheet,
  width: Mm,
  height: Mm,
  units: LengthUnits | undefined,
  measure: TextMeasure,
): Sketch {
  const magnet = on.magnets.get(item.magnets?.magnet ?? '');
  return magnetSketch(item, magnet?.diameter, { width, height }, paperFigures(units).length, measure);
}

function where(
  { wall, check: { item } }: ItemOnSheet,
  width: Mm,
  height: Mm,
  units: LengthUnits | undefined,
  measure: TextMeasure,
): Sketch {
  return whereSketch(wall, item, { width, height }, paperFigures(units).length, measure);
}

function columnsBlock(left: readonly FlowBlock[], right: readonly FlowBlock[], column: Mm): FlowBlock {
  return {
    height: Math.max(heightOf(left), heightOf(right)),
    at: (x, top) => [...stack(left, x, top), ...stack(right, x + column + betweenColumns, top)],
  };
}

function oneBlock(blocks: readonly FlowBlock[]): FlowBlock {
  return { height: heightOf(blocks), at: (left, top) => stack(blocks, left, top) };
}
