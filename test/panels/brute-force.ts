import { intersection } from '../../core/geometry/clip';
import {
  boxOf,
  polygonArea,
  rectangleOfBox,
  regionArea,
  type Point,
  type Region,
} from '../../core/geometry/polygon';
import { leastStockSheets } from '../../core/panels/least-sheets';
import { lostToSquare } from '../../core/panels/lost-to-square';
import { cutRectilinearCell, linesIn, rectilinearRaster, type Line, type PlainPiece } from './plain-cells';

/*
 * Every start of a raster, one after the other: the plain way against which the search for the best start is held.
 * It knows nothing of events, only cells. What makes it bearable: a start is given up as soon as it can no longer
 * beat the best so far, and the cutter runs only for sizes that it has not yet cut.
 */

export interface PlainQuestion {
  readonly area: Region;
  /** Panel cells; hundredths. */
  readonly width: number;
  readonly height: number;
  readonly pitchX: number;
  readonly pitchY: number;
  readonly stagger: number;
  /** Courses are counted from the lowest that reaches this y. */
  readonly bottom: number;
  readonly leastWidth: number;
  /** Stock sheets that the cutter's plan takes. */
  readonly countSheets: (cut: readonly PlainPiece[]) => number;
  /** Starts that are looked at; all if not given. */
  readonly allows?: (start: Point) => boolean;
}

export interface PlainFigures {
  readonly slivers: number;
  readonly stockSheets: number;
  readonly cutPanels: number;
}

export interface Rival extends PlainFigures {
  readonly start: Point;
}

/**
 * The best start of a raster by slivers, stock sheets and cut panels, if it beats the figures given.
 *
 * @param step of the raster, hundredths
 */
export function findRival(question: PlainQuestion, best: PlainFigures, step: number): Rival | undefined {
  const { area, width, height, pitchX, pitchY, countSheets } = question;
  const sheetArea = width * height;
  const total = regionArea(area);
  const box = boxOf(area.flatMap(({ outer }) => outer));
  const courses = coursesOf(question);
  const startsY = Math.ceil(pitchY / step);
  const raster = rectilinearRaster(area);
  const rowsAt = remember((bottom: number) => linesIn(raster.ys, bottom, bottom + height));
  const columnAt = remember((left: number) => surveyColumn(question, left, step, startsY, rowsAt));
  const leastCovered = total - mostInJoints(question, box);
  const known = new Map<string, number>();
  let goal: PlainFigures = best;
  let rival: Rival | undefined;

  for (let x = 0; x < pitchX; x += step) {
    const columns = courses.map(({ shift }) => {
      const found: Column[] = [];
      for (let left = firstLeft(box.left, x + shift, width, pitchX); left < box.right; left += pitchX)
        found.push(columnAt(left));
      return found;
    });
    let spoiler: { readonly column: Column; readonly place: number } | undefined;
    for (let n = 0; n < startsY; n++) {
      if (
        question.allows &&
        !question.allows({ x, y: question.bottom - modulo(question.bottom - n * step, pitchY) })
      )
        continue;
      let full = 0;
      let crossed = 0;
      for (let c = 0; c < courses.length; c++) {
        const place = c * startsY + n;
        for (const { states } of columns[c]!) {
          if (states[place] === whole) full++;
          else if (states[place] === cut) crossed++;
        }
      }
      const least = full + Math.ceil((leastCovered - full * sheetArea) / sheetArea - 1e-9);
      if (goal.slivers === 0 && !beats({ slivers: 0, stockSheets: least, cutPanels: crossed }, goal))
        continue;
      if (goal.slivers === 0 && spoiler?.column.states[spoiler.place + n] === cut) {
        if (spoiler.column.piecesAt(spoiler.place + n).some(({ isSliver }) => isSliver())) continue;
      }

      // Cells that only the clipper can cut come last, and whether their pieces are slivers last of all.
      const pieces: PlainPiece[] = [];
      const late: PlainPiece[] = [];
      let slivers = width < question.leastWidth || height < question.leastWidth ? full : 0;
      for (const pass of [false, true]) {
        for (let c = 0; c < courses.length && slivers <= goal.slivers; c++) {
          const place = c * startsY + n;
          for (const column of columns[c]!) {
            if (column.states[place] !== cut || column.isSloping(place) !== pass) continue;
            for (const piece of column.piecesAt(place)) {
              pieces.push(piece);
              if (pass) late.push(piece);
              else if (piece.isSliver()) slivers++;
            }
            if (slivers > goal.slivers) {
              spoiler = { column, place: c * startsY };
              break;
            }
          }
        }
      }
      if (slivers > goal.slivers) continue;
      const cutPieces = pieces.filter(({ isWhole }) => !isWhole);
      full += pieces.length - cutPieces.length;
      const cutPanels = cutPieces.length;
      const bound = full + leastStockSheets(cutPieces, width, height);
      if (goal.slivers === slivers && !beats({ slivers, stockSheets: bound, cutPanels }, goal)) continue;
      for (const piece of late) if (slivers <= goal.slivers && piece.isSliver()) slivers++;
      if (slivers > goal.slivers) continue;
      if (!beats({ slivers, stockSheets: bound, cutPanels }, goal)) continue;
      const key = keyOf(cutPieces);
      let sheets = known.get(key);
      if (sheets === undefined) known.set(key, (sheets = countSheets(cutPieces)));
      const figures = { slivers, stockSheets: full + sheets, cutPanels };
      if (!beats(figures, goal)) continue;
      goal = figures;
      rival = { ...figures, start: { x, y: question.bottom - modulo(question.bottom - n * step, pitchY) } };
    }
  }
  return rival;
}

function beats(a: PlainFigures, b: PlainFigures): boolean {
  const difference = a.slivers - b.slivers || a.stockSheets - b.stockSheets || a.cutPanels - b.cutPanels;
  return difference < 0;
}

const whole = 1;
const cut = 2;

/** The cells with one left edge, for every course and every y of a start: at course · startsY + n. */
interface Column {
  readonly states: Uint8Array;
  isSloping(place: number): boolean;
  piecesAt(place: number): readonly PlainPiece[];
}

/** Looks at the area's edges between the two sides of a column once for all its cells. */
function surveyColumn(
  question: PlainQuestion,
  left: number,
  step: number,
  startsY: number,
  rowsAt: (bottom: number) => Line[],
): Column {
  const { area, width, height, pitchY, bottom: foot, leastWidth } = question;
  const right = left + width;
  const courses = coursesOf(question).length;
  const states = new Uint8Array(courses * startsY);
  const sloping = new Uint8Array(courses * startsY);
  const bottomOf = (place: number) => {
    const n = place % startsY;
    const y = foot - modulo(foot - n * step, pitchY);
    return y + ((place - n) / startsY) * pitchY;
  };
  const spans = edgesBetween(area, left, right);
  for (let place = 0; place < states.length; place++) {
    const bottom = bottomOf(place);
    const top = bottom + height;
    const through = spans.filter(({ low, high }) => low < top && high > bottom);
    if (through.length > 0) {
      states[place] = cut;
      if (through.some(({ isSloping }) => isSloping)) sloping[place] = 1;
    } else if (isInside(area, (left + right) / 2, (bottom + top) / 2)) {
      states[place] = whole;
    }
  }
  const raster = rectilinearRaster(area);
  const lines = linesIn(raster.xs, left, right);
  let strip: Region | undefined;
  return {
    states,
    isSloping: (place) => sloping[place] === 1,
    piecesAt(place) {
      const bottom = bottomOf(place);
      const cell = { left, bottom, right, top: bottom + height };
      if (!sloping[place]) return cutRectilinearCell(raster, lines, rowsAt(bottom), cell, leastWidth);
      const { bottom: low, top: high } = boxOf(area.flatMap(({ outer }) => outer));
      strip ??= intersection(area, [rectangleOfBox({ left, bottom: low, right, top: high })]);
      return intersection(strip, [rectangleOfBox(cell)])
        .filter((piece) => polygonArea(piece) > 1000)
        .map((piece): PlainPiece => {
          const size = boxOf(piece.outer);
          let isSliver: boolean | undefined;
          return {
            width: size.right - size.left,
            height: size.top - size.bottom,
            area: polygonArea(piece),
            isWhole: false,
            isSliver: () => (isSliver ??= lostToSquare(piece, leastWidth) !== null),
          };
        });
    },
  };
}

/** Heights over which edges of the area run strictly between two uprights. */
function edgesBetween(area: Region, left: number, right: number) {
  const spans: { low: number; high: number; isSloping: boolean }[] = [];
  for (const { outer, holes } of area) {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        if (Math.max(a.x, b.x) <= left || Math.min(a.x, b.x) >= right) return;
        const at = (x: number) => a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
        const ends =
          a.x === b.x
            ? [a.y, b.y]
            : [Math.min(a.x, b.x), Math.max(a.x, b.x)].map((x) => at(Math.min(right, Math.max(left, x))));
        const [low, high] = [Math.min(...ends), Math.max(...ends)];
        spans.push({ low, high, isSloping: a.x !== b.x && a.y !== b.y });
      });
    }
  }
  return spans;
}

function isInside(area: Region, x: number, y: number): boolean {
  let inside = false;
  for (const { outer, holes } of area) {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        if (a.y > y !== b.y > y && a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y) < x) inside = !inside;
      });
    }
  }
  return inside;
}

function coursesOf({ area, bottom, height, pitchY, pitchX, width, stagger }: PlainQuestion) {
  const { top } = boxOf(area.flatMap(({ outer }) => outer));
  // Course 0 begins at most a pitch below the foot of the zone.
  const count = Math.ceil((top - (bottom - pitchY)) / pitchY) + Math.ceil(height / pitchY) - 1;
  return Array.from({ length: count }, (_, course) => ({
    shift: modulo(Math.round(course * stagger * width), pitchX),
  }));
}

function firstLeft(from: number, start: number, width: number, pitch: number): number {
  const left = from - modulo(from - start, pitch);
  return left + width > from ? left : left + pitch;
}

/** The most that joints can take from the area. */
function mostInJoints(
  { width, height, pitchX, pitchY }: PlainQuestion,
  box: ReturnType<typeof boxOf>,
): number {
  const [across, up] = [box.right - box.left, box.top - box.bottom];
  const uprights = Math.ceil(across / pitchX) * (pitchX - width) * up;
  return uprights + Math.ceil(up / pitchY) * (pitchY - height) * across;
}

function keyOf(pieces: readonly PlainPiece[]): string {
  return pieces
    .map(({ width, height, area }) => `${width} ${height} ${area}`)
    .sort()
    .join('|');
}

function modulo(value: number, divisor: number): number {
  return ((value % divisor) + divisor) % divisor;
}

function remember<Value>(work: (key: number) => Value): (key: number) => Value {
  const known = new Map<number, Value>();
  return (key) => {
    let value = known.get(key);
    if (value === undefined) known.set(key, (value = work(key)));
    return value;
  };
}
