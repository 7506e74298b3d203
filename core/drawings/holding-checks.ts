import { adviseHung } from '../holding/advise';
import { checkJudged, type HungCheck } from '../holding/check-hung';
import { judgeHung, wallOfItems } from '../holding/judge-wall';
import type { PanelBond } from '../holding/panel-bond';
import type { Mm } from '../units';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { heightOf, stack, type FlowBlock } from './flow-table';
import { holdingAppendix } from './holding-appendix';
import { holdingFoot } from './holding-foot';
import { betweenItems, itemPages, type CheckedItem, type ItemOnSheet } from './holding-item';
import { holdingSummary, type SheetsOf } from './holding-summary';
import { markedNames, markOfItem } from './holding-words';
import type { LodeplanDocument, Page, TextMeasure } from './page';
import type { PaperBox } from './paper';
import { refuseWithoutCautions } from './refuse-without-cautions';
import { shareCalculations, type SharedCalculations } from './shared-calculations';
import { fieldsOfJob, frameAndTitleBlock } from './title-block';
import { upright } from './trade-page';

const name = 'holding-checks';

/**
 * What hangs on the walls: a summary with a key plan, then a page an item with verdict, magnets, what governs and what to
 * change, then every line of the calculations. The cautions stand on every page. No pages where nothing hangs.
 *
 * @throws Error if a page would be without its cautions
 */
export function holdingChecks(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const items = worked.walls.flatMap((wall) => itemsOf(worked, wall));
  return { name, title: `${worked.job.name}: holding checks`, pages: pagesOf(worked, items, true, measure) };
}

/**
 * The same of one item alone, without the summary.
 *
 * @returns undefined if the wall has no such item
 */
export function holdingCheckOf(
  worked: WorkedOut,
  wallId: string,
  itemId: string,
  measure: TextMeasure,
): LodeplanDocument | undefined {
  const wall = worked.walls.find(({ survey }) => survey.wall.id === wallId);
  const item = wall && itemsOf(worked, wall).find(({ check }) => check.item.id === itemId);
  if (!item) return undefined;
  const mark = markOfItem(item.wall.survey.wall, item.check.item);
  return {
    name: `holding-check-${mark}`,
    title: `${worked.job.name}: holding check ${mark}`,
    pages: pagesOf(worked, [item], false, measure),
  };
}

function itemsOf({ job }: WorkedOut, wall: WorkedWall): CheckedItem[] {
  if (!wall.survey.wall.hung?.length) return [];
  const on = wallOfItems(job, wall.survey.wall, wall.zones);
  return judgeHung(on)
    .map(checkJudged)
    .map((check) => ({ wall, on, check, advice: adviseHung(on, check.item.id) }));
}

interface Draft {
  readonly title: string;
  readonly blocks: readonly FlowBlock[];
  readonly items: readonly ItemOnSheet[];
}

function pagesOf(
  worked: WorkedOut,
  items: readonly CheckedItem[],
  hasSummary: boolean,
  measure: TextMeasure,
): readonly Page[] {
  if (items.length === 0) return [];
  const { units } = worked.job;
  const { space, foot } = frame(worked, '', 1, 1, measure);
  const [width, room] = [space.right - space.left, space.top - space.bottom];
  const shared = shareCalculations(items.map((one) => ({ mark: markOf(one), check: one.check })));

  const ofItems = sheetsOfItems(togetherWhereAlike(items, shared), worked, width, room, measure);
  const appendix = holdingAppendix(shared, bondsOf(items), width, room, measure);
  const summaryWith = (sheetsOf: (item: CheckedItem) => SheetsOf) =>
    hasSummary ? holdingSummary(items, sheetsOf, units, width, room, measure) : [];
  // Numbers of sheets stand in the summary, and take no room of their own there.
  const before = summaryWith(() => ({ own: 0, calculation: 0 })).length;
  const summary = summaryWith(({ check }) => ({
    own: before + 1 + ofItems.findIndex((page) => page.items.some((item) => isAbout(item, check))),
    calculation: check.result?.lines.length ? before + ofItems.length + 1 : undefined,
  }));
  const drafts: Draft[] = [
    ...summary.map((blocks) => ({ title: 'Summary of holding checks', blocks, items: [] })),
    ...ofItems,
    ...appendix.map((blocks) => ({ title: 'Calculation of holding', blocks, items: [] })),
  ];
  const pages = drafts.map(({ title, blocks }, i): Page => {
    const { items: framed, space: free } = frame(worked, title, i + 1, drafts.length, measure);
    return upright([
      ...framed,
      ...stack(blocks, free.left, free.top),
      ...foot.at(free.left, free.bottom - 1),
    ]);
  });
  return refuseWithoutCautions(pages, 'all');
}

/** An item begins a page, unless it fits whole under another; one that fits no page runs over several. */
function sheetsOfItems(
  items: readonly ItemOnSheet[],
  { job }: WorkedOut,
  width: Mm,
  room: Mm,
  measure: TextMeasure,
): Draft[] {
  const drafts: { items: ItemOnSheet[]; blocks: FlowBlock[] }[] = [];
  for (const item of items) {
    const pages = itemPages(item, job.units, width, room, measure);
    const last = drafts.at(-1);
    const together =
      last && pages.length === 1 ? heightOf(last.blocks) + betweenItems + heightOf(pages[0]!) : Infinity;
    if (last && together <= room) {
      last.items.push(item);
      last.blocks.push({ height: betweenItems, at: () => [] }, ...pages[0]!);
    } else drafts.push(...pages.map((blocks) => ({ items: [item], blocks })));
  }
  return drafts.map((draft) => ({ ...draft, title: draft.items.map(titleOf).join('; ') }));
}

function titleOf({ wall, check, others }: ItemOnSheet): string {
  return markedNames(
    wall.survey.wall,
    [check, ...others].map(({ item }) => item),
  );
}

/** Items of a wall that differ in no more than name and place share a sheet. */
function togetherWhereAlike(items: readonly CheckedItem[], shared: SharedCalculations): ItemOnSheet[] {
  const sheets = new Map<string, ItemOnSheet & { others: HungCheck[] }>();
  for (const one of items) {
    const { id: _, name: __, x: ___, y: ____, locked: _____, ...item } = one.check.item;
    const { id: ______, panels: _______, ...verdict } = one.check.verdict;
    const { assumptions, result } = one.check;
    const advice = one.advice.map(({ words, also, factor }) => [words, also, factor]);
    const key = JSON.stringify([one.wall.survey.wall.id, item, verdict, assumptions, result?.lines, advice]);
    const sheet = sheets.get(key);
    if (sheet) sheet.others.push(one.check);
    else sheets.set(key, { ...one, others: [], pulls: pullsOf(one, shared) });
  }
  return [...sheets.values()];
}

function isAbout({ check, others }: ItemOnSheet, one: HungCheck): boolean {
  return check === one || others.includes(one);
}

function frame(worked: WorkedOut, title: string, sheet: number, sheets: number, measure: TextMeasure) {
  const { job } = worked;
  const { items, space } = frameAndTitleBlock(
    {
      ...fieldsOfJob(job),
      format: 'A4',
      landscape: false,
      title,
      documentType: 'Holding checks',
      scale: null,
      sheet,
      sheets,
      notes: [],
      cautions: [],
    },
    measure,
  );
  const foot = holdingFoot(space.right - space.left, job.units, measure);
  const free: PaperBox = { ...space, bottom: space.bottom + foot.height + 1 };
  return { items, space: free, foot };
}

function markOf({ wall, check }: CheckedItem): string {
  return markOfItem(wall.survey.wall, check.item);
}

function pullsOf(item: CheckedItem, { pulls }: SharedCalculations): string[] {
  const mark = markOf(item);
  return pulls.filter(({ usedBy }) => usedBy.includes(mark)).map((pull) => pull.name);
}

/** Of each panel once; the bond of a panel is the same for all that hangs on it. */
function bondsOf(items: readonly CheckedItem[]): PanelBond[] {
  const bonds = items.flatMap(({ check }) => check.bonds);
  return [...new Map(bonds.map((bond) => [bond.panel, bond])).values()];
}
