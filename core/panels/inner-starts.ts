import type { Hundredth } from '../units';
import type { CountedStarts } from './count-starts';
import { unmetBy } from './by-hand/unmet-by';
import {
  fingerprintOf,
  growingSizes,
  leastSizes,
  movedSizes,
  type GrowingSizes,
  type MovedSizes,
} from './growing-sizes';
import { leastFilling, leastStockSheets } from './least-sheets';
import { promisingStart } from './nest-starts';
import type { Pace, Steps } from './pace';
import type { StartCandidate } from './panel';
import type { Podium } from './rank';
import { slopedFields } from './sloped-fields';
import { leastSheetsFor, shiftsInField, startFields, type StartField } from './start-fields';
import type { StartQuestion } from './start-figures';
import type { Counts, StartMeter } from './start-meter';

/** Cut panels of all fields looked at, starts in them, and nests of one search. */
const mostPanels = 6_000;
const mostStarts = 6_000;
const mostNests = 500;

const workOfField = 60;
const workOfBound = 10;
const workOfNest = 20;

/**
 * Looks between the events for starts that beat the best so far in stock sheets or cut panels. Sizes grow and shrink
 * evenly there, so what goes on a stock sheet together only changes where panels side by side just fit it: of the
 * shifts between, those at which the most fits are tried, in fields where a bound leaves them a chance.
 */
export function* searchInside(
  question: StartQuestion,
  meter: StartMeter,
  counted: CountedStarts,
  places: Podium,
  pace: Pace,
): Steps<{ readonly compared: number }> {
  const { pattern, countStockSheets, kerf = 0 } = question;
  const sheetSides = [...new Set([pattern.width, pattern.height])];
  const unmet = unmetBy(question, meter);
  const best = () => places.places[0]!;
  const fields = yield* wantedFields(question, meter, counted, best(), pace);
  const known = new Map<number, number>();
  let compared = 0;

  const promising: { field: StartField; growing: GrowingSizes; least: number }[] = [];
  let panels = 0;
  for (const field of fields.filter(staysClear)) {
    const { x, y, reachX, reachY, counts } = field;
    panels += counts.cut;
    if (panels > mostPanels) break;
    pace.spend(workOfField);
    if (pace.isDue()) yield;
    const growing = growingSizes(meter, x, y, [reachX, reachY]);
    if (!growing) continue;
    const smallest = leastSizes(growing, reachX, reachY);
    const least = counts.full + leastStockSheets(smallest, pattern.width, pattern.height);
    if (least <= mostSheets(counts, best())) promising.push({ field, growing, least });
  }
  promising.sort((a, b) => a.least - b.least || a.field.counts.cut - b.field.counts.cut);

  // Of every field the start with the most room on the stock sheets that it may take comes first, then the seconds.
  const starts: {
    field: StartField;
    moved: MovedSizes;
    dx: Hundredth;
    dy: Hundredth;
    filling: number;
    room: number;
    place: number;
  }[] = [];
  for (const { field, growing } of promising) {
    const { full } = field.counts;
    const moved = movedSizes(growing);
    const most = mostSheets(field.counts, best()) - full;
    const own: typeof starts = [];
    for (const { dx, dy } of shiftsInField(field, growing, sheetSides, kerf)) {
      if (compared >= mostStarts) break;
      compared++;
      pace.spend(workOfBound);
      if (pace.isDue()) yield;
      const filling = leastFilling(moved.move(dx, dy), pattern.width, pattern.height, most);
      if (filling <= most + 1e-9) own.push({ field, moved, dx, dy, filling, room: most - filling, place: 0 });
    }
    own.sort((a, b) => b.room - a.room);
    own.forEach((start, place) => starts.push({ ...start, place }));
  }
  starts.sort((a, b) => a.place - b.place || b.room - a.room);
  for (const { field, moved, dx, dy, filling } of starts) {
    const { counts } = field;
    const most = mostSheets(counts, best());
    if (counts.full + filling > most + 1e-9) continue;
    // Beside slopes and curves sizes grow evenly only more or less.
    const sizes = meter.hasSlopes ? meter.cutSizes(field.x + dx, field.y + dy) : moved.move(dx, dy);
    const key = fingerprintOf(sizes);
    let sheets = known.get(key);
    if (sheets === undefined) {
      if (known.size >= mostNests) break;
      known.set(key, (sheets = countStockSheets(sizes)));
      pace.spend(sizes.length * workOfNest);
      if (pace.isDue()) yield;
    }
    if (counts.full + sheets <= most) enter(field.x + dx, field.y + dy);
  }
  return { compared };

  /** Where more joints are too near to cracks than at the best, sizes do not matter; the count is one all over a field. */
  function staysClear({ x, y }: StartField): boolean {
    if (!question.nearJoints) return true;
    const { count } = question.nearJoints(question.area);
    return count(meter.startAt(x, y)) <= best().nearCorners;
  }

  /** As it is, not as it should be by what its neighbours are. */
  function enter(x: Hundredth, y: Hundredth): void {
    if (unmet && unmet(x, y) > counted.leastUnmet) return;
    const counts = meter.countPanels(x, y, counted.leastSlivers);
    if (!counts) return;
    const { hope, full } = promisingStart(question, meter, x, y, counts);
    const sizes = meter.cutSizes(x, y);
    places.enter({ ...hope, stockSheets: full + countStockSheets(sizes) }, sizes);
  }
}

/** The fields that may hold a better start, those with the fewest cut panels first. */
function* wantedFields(
  question: StartQuestion,
  meter: StartMeter,
  counted: CountedStarts,
  best: StartCandidate,
  pace: Pace,
): Steps<StartField[]> {
  const leastInAll = leastSheetsFor(question);
  const isWanted = (counts: Counts) => Math.max(counts.full, leastInAll) <= mostSheets(counts, best);
  const fields = startFields(question, counted, isWanted);
  if (!meter.hasSlopes) return byCut(fields);
  // Along one axis alone, slopes part what the events of that axis leave together.
  const isAlongOne = ({ reachX, reachY }: StartField) => (reachX[0] === 0) !== (reachY[0] === 0);
  const all = fields.filter((field) => !isAlongOne(field));
  for (const field of slopedFields(question, counted, meter, isWanted)) {
    if (field) all.push(field);
    if (pace.isDue()) yield;
  }
  return byCut(all);
}

const byCut = (fields: StartField[]) => fields.sort((a, b) => a.counts.cut - b.counts.cut);

/** The most stock sheets with which a start still beats the best. */
function mostSheets({ slivers, cut }: Counts, best: StartCandidate): number {
  if (slivers < best.slivers) return Infinity;
  return cut < best.cutPanels ? best.stockSheets : best.stockSheets - 1;
}
