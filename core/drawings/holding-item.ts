import type { Advice } from '../holding/advice';
import type { HungCheck } from '../holding/check-hung';
import type { WallOfItems } from '../holding/held-item';
import { nameOfWall, sentence as capital } from '../job/names';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { dealColumns, type ColumnTable } from './deal-columns';
import { heightOf, stack, type FlowBlock } from './flow-table';
import { listUnder, runInParagraph, smallHeading } from './holding-lists';
import { governingTable, magnetsTable, modesTable } from './holding-figures';
import { adviceWords, bondWords, comma, markOfItem } from './holding-words';
import { verdictBlocks } from './holding-verdict';
import { magnetSketch, whereSketch } from './hung-sketch';
import type { TextMeasure } from './page';
import { paperFigures, sentenceOnPaper } from './paper-figures';
import { placeSketch, type Sketch } from './sketch';

/** An item with all that is said of it. */
export interface CheckedItem {
  readonly wall: WorkedWall;
  readonly on: WallOfItems;
  readonly check: HungCheck;
  readonly advice: readonly Advice[];
}

/** What one sheet is about: an item, and others of the same wall that differ in no more than name and place. */
export interface ItemOnSheet extends CheckedItem {
  readonly others: readonly HungCheck[];
  /** Names of the pulls in the appendix that it goes by. */
  readonly pulls: readonly string[];
}

const betweenColumns: Mm = 6;
/** Between two items that share a page. */
export const betweenItems: Mm = 6;
/** Heights of the sketches, the largest that leave the item one page are taken. */
type SketchHeights = readonly [magnets: Mm, where: Mm];
const sketchHeights: readonly SketchHeights[] = [
  [66, 46],
  [58, 44],
  [50, 42],
  [44, 38],
  [38, 34],
];

/**
 * One item: verdict; sketches, figures, why and what to change in two columns; what is taken for granted. One block where it
 * fits `room`, else pages of blocks over the whole width, on which tables that go on repeat their headings.
 */
export function itemPages(
  item: ItemOnSheet,
  units: LengthUnits | undefined,
  width: Mm,
  room: Mm,
  measure: TextMeasure,
): FlowBlock[][] {
  const top = verdictBlocks(item, units, width, measure);
  const foot = footOf(item, units, width, measure);
  const column = (width - betweenColumns) / 2;
  const whole = (sketches: HeadsOfColumns) =>
    oneBlock([...top, bodyOf(item, sketches, units, column, measure), ...foot]);
  const least = sketchHeights.at(-1)!;
  if (item.check.result === undefined) {
    const short = whole(inOneColumn(item, least, units, column, measure));
    if (short.height <= (room - betweenItems) / 2) return [[short]];
  }
  // In half a page's width, figures in feet and inches would break in the table of magnets.
  const isNarrow = units === 'ft-in' && item.check.result !== undefined;
  const ways = (isNarrow ? [] : [inBothColumns, inOneColumn]).flatMap((sketches) =>
    sketchHeights.map((heights) => () => sketches(item, heights, units, column, measure)),
  );
  for (const sketches of ways) {
    const heads = sketches();
    if (!heads.isLegible) continue;
    const block = whole(heads);
    if (block.height <= room) return [[block]];
  }
  const pair = sketchPair(item, sketchHeights[2]!, units, width, measure);
  const { tables, lists } = partsOf(item, units, width, measure);
  const first: ColumnTable = { head: () => oneBlock(top), rows: [pair] };
  const parts = [...tables, ...lists, foot].filter((part) => part.length > 0);
  return dealColumns([first, ...parts.map(headedTable)], () => room);
}

/** What keeps with the next at the head of a part is its heading. */
function headedTable(part: readonly FlowBlock[]): ColumnTable {
  const from = part.findIndex(({ keepWithNext }) => !keepWithNext);
  return { head: () => oneBlock(part.slice(0, from)), rows: part.slice(from) };
}

/** Everything whose width can be chosen. */
function partsOf(
  { wall, check, advice, pulls }: ItemOnSheet,
  units: LengthUnits | undefined,
  width: Mm,
  measure: TextMeasure,
) {
  const say = (text: string) => comma(sentenceOnPaper(text, units));
  const { verdict } = check;
  const inFull = `in full at the end: ${[markOfItem(wall.survey.wall, check.item), ...pulls].join(', ')}`;
  const list = (heading: string, sentences: readonly string[]) =>
    listUnder(heading, sentences, width, measure);
  return {
    tables: [
      magnetsTable(check, paperFigures(units), width, measure),
      modesTable(check, width, measure),
      governingTable(check, inFull, width, measure),
    ],
    lists: [
      list('Why', verdict.reasons.map(say)),
      list(
        'What to change',
        advice.map((one) => say(adviceWords(one, verdict.asked))),
      ),
    ],
  };
}

/** What the engineer reads, over the whole width. */
function footOf(
  { wall, check, others }: ItemOnSheet,
  units: LengthUnits | undefined,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const say = (text: string) => comma(sentenceOnPaper(text, units));
  const runIn = (first: string, sentences: readonly string[]) =>
    runInParagraph(first, sentences, width, measure);
  const all = [check, ...others];
  const bonds = new Map(all.flatMap((one) => one.bonds).map((bond) => [bond.panel, bond]));
  return [
    { height: 2, at: () => [] },
    ...all.flatMap((one) =>
      runIn(
        all.length === 1
          ? capital(nameOfWall(wall.survey.wall))
          : `${markOfItem(wall.survey.wall, one.item)} on ${nameOfWall(wall.survey.wall)}`,
        [say(whereWords(one, units))],
      ),
    ),
    ...runIn('Taken for granted', check.assumptions.map(say)),
    ...runIn('Adhesive behind it', bondWords([...bonds.values()]).map(comma)),
  ];
}

function whereWords({ item, verdict: { zones, panels } }: HungCheck, units: LengthUnits | undefined): string {
  const figures = paperFigures(units);
  const onZone =
    zones.length === 0
      ? ''
      : ` On zone ${zones.join(', ')}${panels.length > 0 ? `, ${panels.length > 1 ? 'panels' : 'panel'} ${panels.join(', ')}` : ''}.`;
  return `lower left corner ${figures.words(item.x)} from the datum and ${figures.words(item.y)} above it; ${figures.words(item.width)} wide, ${figures.words(item.height)} high.${onZone}`;
}

/** What stands at the head of each column. */
interface HeadsOfColumns {
  readonly left: FlowBlock;
  readonly right?: FlowBlock;
  /** Whether what is drawn can be made out. */
  readonly isLegible: boolean;
}

function inBothColumns(
  item: ItemOnSheet,
  [magnetsHeight, whereHeight]: SketchHeights,
  units: LengthUnits | undefined,
  column: Mm,
  measure: TextMeasure,
): HeadsOfColumns {
  const front = magnets(item, column, magnetsHeight, units, measure);
  const onWall = where(item, column, whereHeight, units, measure);
  return {
    left: captioned('From the front', front),
    right: captioned('Where it hangs', onWall),
    isLegible: front.isLegible && onWall.isLegible,
  };
}

function inOneColumn(
  item: ItemOnSheet,
  heights: SketchHeights,
  units: LengthUnits | undefined,
  column: Mm,
  measure: TextMeasure,
): HeadsOfColumns {
  const left = sketchPair(item, heights, units, column, measure);
  return { left, isLegible: left.isLegible };
}

/** Figures, why and what to change under the sketches, dealt out so that the higher column is as low as can be. */
function bodyOf(
  item: ItemOnSheet,
  { left, right }: HeadsOfColumns,
  units: LengthUnits | undefined,
  column: Mm,
  measure: TextMeasure,
): FlowBlock {
  const { tables, lists } = partsOf(item, units, column, measure);
  const [ofMagnets = [], ...rest] = [...tables, ...lists].filter((part) => part.length > 0);
  const heads: readonly [FlowBlock[], FlowBlock[]] = [[left, ...ofMagnets], right ? [right] : []];
  let best: FlowBlock | undefined;
  for (let choice = 0; choice < 2 ** rest.length; choice++) {
    // The first choice has all at the right, so that what reads on stays together where there is room.
    const inLeft = rest.filter((_, i) => choice & (1 << i));
    const inRight = rest.filter((part) => !inLeft.includes(part));
    const dealt = columnsBlock([...heads[0], ...inLeft.flat()], [...heads[1], ...inRight.flat()], column);
    if (!best || dealt.height < best.height - 1) best = dealt;
  }
  return best!;
}

/** Both sketches side by side. */
function sketchPair(
  item: ItemOnSheet,
  [height]: SketchHeights,
  units: LengthUnits | undefined,
  width: Mm,
  measure: TextMeasure,
): FlowBlock & { readonly isLegible: boolean } {
  const { item: hung } = item.check;
  const first = (hung.width > 1.5 * hung.height ? 0.56 : 0.48) * width;
  const front = magnets(item, first, height - captionHeight, units, measure);
  const onWall = where(item, width - first, height - captionHeight, units, measure);
  return {
    isLegible: front.isLegible && onWall.isLegible,
    height: Math.max(front.height, onWall.height) + captionHeight,
    at: (left, top) => [
      ...captioned('From the front', front).at(left, top),
      ...captioned('Where it hangs', onWall).at(left + first, top),
    ],
  };
}

const captionHeight: Mm = 6.4;

function captioned(words: string, sketch: Sketch): FlowBlock {
  const heading = smallHeading(words);
  return {
    height: sketch.height + captionHeight,
    at: (left, top) => [...heading.at(left, top), ...placeSketch(sketch, left, top - heading.height)],
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
  { wall, check, others }: ItemOnSheet,
  width: Mm,
  height: Mm,
  units: LengthUnits | undefined,
  measure: TextMeasure,
): Sketch {
  const items = [check, ...others].map(({ item }) => item);
  return whereSketch(wall, items, { width, height }, paperFigures(units).length, measure);
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
