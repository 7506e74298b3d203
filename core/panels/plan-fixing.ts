import type { Finding } from '../finding';
import { boxOf } from '../geometry/polygon';
import type { Layout, StockSheet, Temperatures } from '../job/schema';
import { usableSize } from '../job/usable-size';
import { toHundredth, toMm, type Hundredth } from '../units';
import { closingPanels } from './closing-panels';
import { creepOf, type Creep, type SheetTolerance } from './creep';
import { fixingOrder, type FixingOrder } from './fixing-order';
import type { Panel } from './panel';
import { isFixedEdge, panelRuns, type PanelRun } from './panel-runs';
import { seamsOf } from './seams';
import { thermalGap } from './thermal-gap';

/** How a layout is put on the wall. */
export interface FixingPlan {
  /** As given, the closing ones marked. */
  readonly panels: readonly Panel[];
  readonly fixing: FixingOrder;
  /** The row and the column that may creep most, if stock sheets have a tolerance. */
  readonly creep: readonly Creep[];
  readonly findings: readonly Finding[];
}

export interface FixingQuestion {
  readonly wallId: string;
  readonly zoneId: string;
  readonly layout: Layout;
  readonly panels: readonly Panel[];
  readonly stock: readonly StockSheet[];
  readonly temperatures?: Temperatures | undefined;
}

export function planFixing(question: FixingQuestion): FixingPlan {
  const { zoneId, layout, stock } = question;
  const find = (id: string) => stock.find((entry) => entry.id === id);
  const gap = toHundredth(layout.jointGap);
  const seams = seamsOf(
    question.panels.map(({ outline }) => outline),
    gap,
  );
  const runs = panelRuns(question.panels, seams);
  const closing = closingPanels(question.panels, runs, zoneId, (id) => sidesOf(find(id)));
  const panels = question.panels.map((panel, i) => (closing.has(i) ? { ...panel, closing: true } : panel));
  return {
    panels,
    fixing: fixingOrder(panels, seams, closing),
    creep: greatest(creepOf(panels, runs, (id) => toleranceOf(find(id)))),
    findings: [...rowsThatMustFit(question, runs), ...narrowGap(question)],
  };
}

function sidesOf(stock: StockSheet | undefined): Hundredth[] {
  return stock ? Object.values(usableSize(stock)) : [];
}

function toleranceOf(stock: StockSheet | undefined): SheetTolerance {
  const { size = 0, squareness = 0 } = stock?.tolerance ?? {};
  return { size: toHundredth(size), squareness: toHundredth(squareness) };
}

/** The worst row and the worst column. */
function greatest(all: readonly Creep[]): Creep[] {
  return (['x', 'y'] as const).flatMap((axis) => {
    const own = all.filter((creep) => creep.axis === axis);
    return own.length === 0 ? [] : [own.reduce((worst, creep) => (creep.most > worst.most ? creep : worst))];
  });
}

/** Whole stock sheets between two edges that do not give way: nothing can be cut to make them fit. */
function rowsThatMustFit({ wallId, zoneId, panels }: FixingQuestion, runs: readonly PanelRun[]): Finding[] {
  return runs.flatMap(({ axis, panels: run, ends }): Finding[] => {
    if (!ends.every((cause) => isFixedEdge(cause, zoneId))) return [];
    if (!run.every((i) => panels[i]!.full)) return [];
    const [first, last] = [panels[run[0]!]!, panels[run.at(-1)!]!];
    const where = run.length === 1 ? `Panel ${first.mark} is` : `Panels ${first.mark} to ${last.mark} are`;
    const what = run.length === 1 ? 'a whole stock sheet' : 'whole stock sheets';
    return [
      {
        level: 'warning',
        code: 'must-fit-exactly',
        wall: wallId,
        object: first.mark,
        text:
          `${where} ${what} that must fit exactly between two fixed edges, ${axis === 'x' ? 'from left to right' : 'from below to above'}: ` +
          `move the start so that the last panel is cut to measure, or allow a joint or clearance to take up what the stock sheets are off by.`,
      },
    ];
  });
}

function narrowGap({ wallId, zoneId, layout, panels, temperatures }: FixingQuestion): Finding[] {
  if (!temperatures || panels.length < 2) return [];
  const longest = Math.max(...panels.map(longestSide));
  const needed = Math.ceil(thermalGap(toMm(longest), temperatures) * 100 - 1e-6) / 100;
  if (layout.jointGap >= needed) return [];
  const { atFixing, high } = temperatures;
  return [
    {
      level: 'warning',
      code: 'joint-gap-too-narrow',
      wall: wallId,
      object: zoneId,
      text:
        `Panels of zone ${zoneId} up to ${toMm(longest)} mm long grow by ${needed} mm from ${atFixing} °C at fixing to ${high} °C, ` +
        `and the joint gap is ${layout.jointGap} mm: make it at least ${needed} mm, or fix the panels when they are warmer.`,
    },
  ];
}

function longestSide({ outline }: Panel): Hundredth {
  const { left, right, bottom, top } = boxOf(outline.outer);
  return Math.max(right - left, top - bottom);
}
