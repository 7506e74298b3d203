import { polygonArea } from '../geometry/polygon';
import type { Panel } from '../panels/panel';
import type { JobSheet, WorkedOut } from '../worked-out';
import type { Hundredth } from '../units';

/** kg/m³. Source: EN 1991-1-1:2002, table A.4, gives steel 77,0 to 78,5 kN/m³; 7850 kg/m³ is 76,98 kN/m³. */
export const steelDensity = 7850;

export interface StockOrder {
  readonly stock: string;
  readonly plan: number;
  readonly spares: number;
  /** Plan and spares. */
  readonly toOrder: number;
}

export interface KeptOffcut {
  /** Planned sheet or rack piece it is left of. */
  readonly sheet: string;
  readonly stock: string;
  readonly width: Hundredth;
  readonly height: Hundredth;
}

/** The sums of a job or a part of it. Areas in hundredths squared, lengths in hundredths. */
export interface JobFigures {
  readonly panels: number;
  readonly whole: number;
  readonly cut: number;
  readonly slivers: number;
  readonly order: readonly StockOrder[];
  readonly planned: number;
  readonly spares: number;
  readonly toOrder: number;
  readonly rackPieces: number;
  readonly sheetArea: number;
  readonly panelArea: number;
  readonly keptArea: number;
  /** Steel that is neither on the wall nor kept: sheets − panels − kept offcuts, kerf included. */
  readonly wasteArea: number;
  /** Of the area of all sheets cut or fixed, racked ones included; 0 where there are none. */
  readonly wasteShare: number;
  readonly offcutsKept: readonly KeptOffcut[];
  readonly cutLength: Hundredth;
  /** Steel on the wall in kg; null while a stock of these panels has no thickness. */
  readonly steelMass: number | null;
}

/**
 * What the screen and the cut list sum up of a worked-out job. Every figure is derived here and nowhere else.
 *
 * @param delivery restricts panels and sheets to one delivery
 */
export function figuresOf(worked: WorkedOut, delivery?: string): JobFigures {
  const sheets = worked.cutting.sheets.filter(
    (sheet) => delivery === undefined || sheet.delivery === delivery,
  );
  const marks = new Set(sheets.flatMap(({ placements }) => placements.map(({ mark }) => mark)));
  const panels = worked.walls
    .flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? []))
    .filter(({ mark }) => delivery === undefined || marks.has(mark));
  const order = delivery === undefined ? jobOrder(worked) : deliveryOrder(sheets);
  const sum = (pick: (entry: StockOrder) => number) => order.reduce((total, entry) => total + pick(entry), 0);
  const sheetArea = sheets.reduce((total, { width, height }) => total + width * height, 0);
  const panelArea = panels.reduce((total, { outline }) => total + polygonArea(outline), 0);
  const offcutsKept = keptOffcuts(sheets);
  const keptArea = offcutsKept.reduce((total, { width, height }) => total + width * height, 0);
  const wasteArea = sheetArea - panelArea - keptArea;
  const whole = panels.filter(({ full }) => full).length;
  return {
    panels: panels.length,
    whole,
    cut: panels.length - whole,
    slivers: panels.filter(({ sliver }) => sliver).length,
    order,
    planned: sum(({ plan }) => plan),
    spares: sum(({ spares }) => spares),
    toOrder: sum(({ toOrder }) => toOrder),
    rackPieces: sheets.filter(({ fromRack }) => fromRack !== null).length,
    sheetArea,
    panelArea,
    keptArea,
    wasteArea,
    wasteShare: sheetArea > 0 ? wasteArea / sheetArea : 0,
    offcutsKept,
    cutLength: sheets.reduce((total, sheet) => total + lengthOfCuts(sheet), 0),
    steelMass: massOf(panels, worked),
  };
}

/** Steel of some panels in kg: area × thickness × density; null while a stock has no thickness. */
export function massOf(panels: readonly Panel[], { job }: Pick<WorkedOut, 'job'>): number | null {
  let mass = 0;
  for (const { stock, outline } of panels) {
    const thickness = job.stock.find(({ id }) => id === stock)?.thickness;
    if (thickness === undefined) return null;
    mass += (polygonArea(outline) / 1e10) * (thickness / 1e3) * steelDensity;
  }
  return mass;
}

function jobOrder({ cutting }: WorkedOut): StockOrder[] {
  return cutting.order.map((entry) => ({ ...entry, toOrder: entry.plan + entry.spares }));
}

/** Spares are bought once for the job, so a delivery orders what its plan says. */
function deliveryOrder(sheets: readonly JobSheet[]): StockOrder[] {
  const plan = new Map<string, number>();
  for (const { stock, fromRack } of sheets) if (!fromRack) plan.set(stock, (plan.get(stock) ?? 0) + 1);
  return [...plan].map(([stock, count]) => ({ stock, plan: count, spares: 0, toOrder: count }));
}

function keptOffcuts(sheets: readonly JobSheet[]): KeptOffcut[] {
  return sheets.flatMap(({ id, stock, offcuts }) =>
    offcuts.filter(({ keep }) => keep).map(({ width, height }) => ({ sheet: id, stock, width, height })),
  );
}

function lengthOfCuts({ cuts }: JobSheet): number {
  return cuts.reduce((total, { from, to }) => total + Math.hypot(to.x - from.x, to.y - from.y), 0);
}
