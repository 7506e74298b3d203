import { boxOf, polygonArea, rectangle, type Box, type Point, type Polygon } from '../geometry/polygon';
import { runSteps, type Steps } from '../panels/pace';
import { freeSpaces, occupy } from './free-spaces';
import type { CutPanel, CuttingTask } from './plan';
import { allTurns, shapeKey, turned, type Turn } from './poses';
import { coverOf, type Rect } from './slabs';
import type { PairPart } from './slanted-pairs';

/** Panels that are alike count as one kind: same shape, however turned, and the same stock. */
export interface PanelKind {
  /** Numbers of its panels in the task. */
  readonly members: readonly number[];
  /** Numbers of the stock formats it may be cut from and whose stock sheet it fits. */
  readonly stock: readonly number[];
  /** These and the formats it may be cut from of which only a rack piece has room for it. */
  readonly allowed: readonly number[];
  /** Every way it may lie that differs from the others. */
  readonly poses: readonly Pose[];
  readonly isRectangle: boolean;
  /** True area, hundredths squared. */
  readonly area: number;
  /** Sides of its bounding rectangle. */
  readonly longSide: number;
  readonly shortSide: number;
  /** Where some panels are paired (see `slanted-pairs.ts`): number of the kind among all single kinds. */
  readonly single?: number;
}

export interface Pose {
  readonly turn: Turn;
  /** Lower left corner of its box at the origin. */
  readonly shape: Polygon;
  readonly width: number;
  readonly height: number;
  /** Rectangles that cover it. */
  readonly cover: readonly Rect[];
  /** Rectangles of waste inside its box, kerf to the panel taken off, apart from each other by a kerf. */
  readonly waste: readonly Rect[];
  /** The two panels of a slanted pair, and the cut that parts them, in the frame of the pose. */
  readonly parts?: readonly PairPart[];
  readonly slant?: readonly [Point, Point];
}

const PANELS_OF_A_STEP = 32;

/**
 * @throws Error if a panel fits no stock format it may be cut from (the layout never makes such a panel)
 */
export function kindsOf(task: CuttingTask): PanelKind[] {
  return runSteps(kindsInSteps(task));
}

/** The same, with pauses. */
export function* kindsInSteps(task: CuttingTask): Steps<PanelKind[]> {
  const formatsFor = formatFinder(task);
  const groups = new Map<
    string,
    { members: number[]; shape: Polygon; formats: Formats; lying: readonly Lying[] }
  >();
  const known = new Map<string, readonly Lying[]>();
  for (const [number, panel] of task.panels.entries()) {
    if (number % PANELS_OF_A_STEP === PANELS_OF_A_STEP - 1) yield undefined;
    const formats = formatsFor(panel);
    const shape = turned(panel.outline, allTurns[0]!);
    const { right: width, top: height } = boxOf(shape.outer);
    let key = `${Math.max(width, height)} × ${Math.min(width, height)}`;
    let lying: readonly Lying[] = [];
    if (polygonArea(shape) !== width * height) {
      const turns = turnsOn(task, formats);
      const own = `${turns.length} ${shapeKey(shape)}`;
      lying = known.get(own) ?? waysToLie(shape, turns);
      known.set(own, lying);
      key = lying.reduce((least, one) => (one.key < least ? one.key : least), lying[0]!.key);
    }
    key = `${key} of ${formats.allowed.join()}`;
    const group = groups.get(key);
    if (group) group.members.push(number);
    else groups.set(key, { members: [number], shape, formats, lying });
  }
  const kinds: PanelKind[] = [];
  for (const { members, shape, formats, lying } of groups.values()) {
    if (kinds.length % PANELS_OF_A_STEP === PANELS_OF_A_STEP - 1) yield undefined;
    const { right, top } = boxOf(shape.outer);
    const area = polygonArea(shape);
    const isRectangle = area === right * top;
    const poses = isRectangle ? posesOfRectangle(right, top) : posesOf(lying, task.kerf);
    const [longSide, shortSide] = [Math.max(right, top), Math.min(right, top)];
    kinds.push({ members, ...formats, poses, isRectangle, area, longSide, shortSide });
  }
  return kinds;
}

type Formats = Pick<PanelKind, 'stock' | 'allowed'>;

function formatFinder(task: CuttingTask): (panel: CutPanel) => Formats {
  const numbers = new Map<string, number[]>();
  const rackOf = task.stock.map(({ id }) => task.rack.filter((piece) => piece.stock === id));
  return ({ mark, stock: ids, outline }) => {
    const box = boxOf(outline.outer);
    const listed = ids.join('\n');
    let may = numbers.get(listed);
    if (!may) {
      may = task.stock.flatMap(({ id }, number) => (ids.includes(id) ? [number] : []));
      numbers.set(listed, may);
    }
    const stock = may.filter((number) => hasRoom(task.stock[number]!, box));
    if (stock.length === 0) throw new Error(`Panel ${mark} fits no stock sheet it may be cut from.`);
    const allowed = may.filter(
      (number) => stock.includes(number) || rackOf[number]!.some((piece) => hasRoom(piece, box)),
    );
    return { stock, allowed };
  };
}

/** Stock with a face side is never turned over. */
function turnsOn(task: CuttingTask, { allowed }: Formats): readonly Turn[] {
  return allowed.some((number) => task.stock[number]!.hasFace) ? allTurns.slice(0, 4) : allTurns;
}

/** One way round or the other. */
function hasRoom(sheet: { width: number; height: number }, { left, bottom, right, top }: Box): boolean {
  const [width, height] = [right - left, top - bottom];
  return (width <= sheet.width && height <= sheet.height) || (height <= sheet.width && width <= sheet.height);
}

function posesOfRectangle(width: number, height: number): Pose[] {
  const pose = (turn: Turn, w: number, h: number): Pose => ({
    turn,
    shape: rectangle(0, 0, w, h),
    width: w,
    height: h,
    cover: [[0, 0, w, h]],
    waste: [],
  });
  const upright = pose(allTurns[0]!, width, height);
  return width === height ? [upright] : [upright, pose(allTurns[1]!, height, width)];
}

/** A panel turned, and what tells its shape then. */
interface Lying {
  readonly turn: Turn;
  readonly shape: Polygon;
  readonly key: string;
}

/** Every way that differs from those before it. */
function waysToLie(shape: Polygon, turns: readonly Turn[]): Lying[] {
  const ways = new Map<string, Lying>();
  for (const turn of turns) {
    const lying = turned(shape, turn);
    const key = shapeKey(lying);
    if (!ways.has(key)) ways.set(key, { turn, shape: lying, key });
  }
  return [...ways.values()];
}

function posesOf(lying: readonly Lying[], kerf: number): Pose[] {
  return lying.map(({ turn, shape }): Pose => {
    const { right: width, top: height } = boxOf(shape.outer);
    // Edge to edge, most poses are twins of another and nobody asks what covers them.
    let cover: readonly Rect[] | undefined;
    let waste: readonly Rect[] | undefined;
    return {
      turn,
      shape,
      width,
      height,
      get cover() {
        return (cover ??= coverOf(shape));
      },
      get waste() {
        return (waste ??= wasteOf(this.cover, width, height, kerf));
      },
    };
  });
}

/** Rectangles smaller than this are no use even to the smallest panel; 10 mm. */
const LEAST_WASTE = 1000;

/** The largest free rectangle of the box, then the largest of what is left, and so on. */
function wasteOf(cover: readonly Rect[], width: number, height: number, kerf: number): Rect[] {
  const free = freeSpaces(0, 0, width + kerf, height + kerf);
  const take = ([left, bottom, right, top]: Rect) =>
    occupy(free, left, bottom, right + kerf, top + kerf, kerf + LEAST_WASTE);
  cover.forEach(take);
  const waste: Rect[] = [];
  while (free.count > 0) {
    let best = 0;
    const area = (i: number) => (free.right[i]! - free.left[i]!) * (free.top[i]! - free.bottom[i]!);
    for (let i = 1; i < free.count; i++) if (area(i) > area(best)) best = i;
    const rect: Rect = [
      free.left[best]!,
      free.bottom[best]!,
      free.right[best]! - kerf,
      free.top[best]! - kerf,
    ];
    waste.push(rect);
    take(rect);
  }
  return waste;
}
