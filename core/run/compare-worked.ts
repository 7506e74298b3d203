import { figuresOf } from '../drawings/job-figures';
import { boxOf, polygonArea } from '../geometry/polygon';
import { figure, told, type Difference } from '../job/differences/difference';
import { jobDifferences } from '../job/differences/differences';
import { matchZones } from '../job/differences/objects';
import { shiftOf } from '../job/differences/place';
import { matchWalls } from '../job/differences/walls';
import { nameOfZone, sentence } from '../job/names';
import { boxOfObject } from '../job/shape';
import { inch, type LengthUnits } from '../lengths';
import type { Panel, ZoneLayout } from '../panels/panel';
import { toHundredth, type Hundredth } from '../units';
import type { WorkedOut } from '../worked-out';
import { moneyInWords } from './whole-money';

/**
 * In what one worked-out job differs from an earlier one, or from another alternative: all that `jobDifferences` tells,
 * then the panels of every zone, then the plan. [] if and only if nothing differs.
 */
export function compareWorked(before: WorkedOut, after: WorkedOut): Difference[] {
  return [
    ...jobDifferences(before.job, after.job),
    ...panelDifferences(before, after),
    ...planDifferences(before, after),
  ];
}

function panelDifferences(before: WorkedOut, after: WorkedOut): Difference[] {
  return matchWalls(before.job, after.job).pairs.flatMap(([wallBefore, wallAfter]) =>
    matchZones(wallBefore, wallAfter).pairs.flatMap(([was, is]): Difference[] => {
      const [from, to] = [
        layoutOf(before, wallBefore.id, was.id)?.panels ?? [],
        layoutOf(after, wallAfter.id, is.id)?.panels ?? [],
      ];
      const shift = shiftOf(was, is) ?? { x: 0, y: 0 };
      const says = panelsInWords(from, to, toHundredth(shift.x), toHundredth(shift.y));
      if (!says) return [];
      const text = told(sentence(nameOfZone(is)), says);
      return [
        {
          kind: 'changed',
          subject: 'panels',
          wall: wallAfter.id,
          object: is.id,
          text,
          places: [boxOfObject(is)],
        },
      ];
    }),
  );
}

/** `2 panels fewer, 12 instead of 14; 4 cut instead of 5`; empty if the same panels lie at the same places of the zone. */
function panelsInWords(before: readonly Panel[], after: readonly Panel[], dx: number, dy: number): string {
  const cut = (panels: readonly Panel[]) => panels.filter(({ full }) => !full).length;
  const slivers = (panels: readonly Panel[]) => panels.filter(({ sliver }) => sliver).length;
  const grown = after.length - before.length;
  const parts = [
    grown === 0
      ? ''
      : `${counted(Math.abs(grown), 'panel')} ${grown > 0 ? 'more' : 'fewer'}, ${after.length} instead of ${before.length}`,
    cut(before) === cut(after) ? '' : `${cut(after)} cut instead of ${cut(before)}`,
    slivers(before) === slivers(after)
      ? ''
      : `${counted(slivers(after), 'sliver')} instead of ${slivers(before)}`,
  ].filter(Boolean);
  if (parts.length > 0) return parts.join('; ');
  const others = unlikePanels(before, after, dx, dy);
  return others === 0 ? '' : `${counted(others, 'panel')} cut or laid differently`;
}

/** How many of the later panels lie where none of the same outline lay before. */
function unlikePanels(before: readonly Panel[], after: readonly Panel[], dx: number, dy: number): number {
  const left = before.map(({ outline, stock }) => ({
    box: boxOf(outline.outer),
    area: polygonArea(outline),
    stock,
  }));
  return after.filter(({ outline, stock }) => {
    const box = boxOf(outline.outer);
    const area = polygonArea(outline);
    // A hundredth on every edge, which is what counts as the same.
    const slack = 2 * (box.right - box.left + box.top - box.bottom);
    const at = left.findIndex(
      (other) =>
        other.stock === stock &&
        Math.abs(other.box.left + dx - box.left) <= 1 &&
        Math.abs(other.box.right + dx - box.right) <= 1 &&
        Math.abs(other.box.bottom + dy - box.bottom) <= 1 &&
        Math.abs(other.box.top + dy - box.top) <= 1 &&
        Math.abs(other.area - area) <= slack,
    );
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  }).length;
}

function planDifferences(before: WorkedOut, after: WorkedOut): Difference[] {
  const [was, is] = [figuresOf(before), figuresOf(after)];
  const stock = [...after.cutting.order, ...before.cutting.order].map((entry) => entry.stock);
  const ordered = ({ order }: typeof was, id: string) =>
    order.find((entry) => entry.stock === id)?.toOrder ?? 0;
  const name = (id: string) =>
    [...after.job.stock, ...before.job.stock].find((sheet) => sheet.id === id)?.name || id;
  const cost = ({ cutting, job }: WorkedOut) => moneyInWords(cutting.cost, job.currency);
  const pairs: readonly (readonly [label: string, before: string, after: string])[] = [
    ...[...new Set(stock)].map(
      (id) => [`stock sheets to order of ${name(id)}:`, `${ordered(was, id)}`, `${ordered(is, id)}`] as const,
    ),
    ['price of the stock sheets', cost(before), cost(after)],
    ['rack pieces used', `${was.rackPieces}`, `${is.rackPieces}`],
    ['offcuts to keep', `${was.offcutsKept.length}`, `${is.offcutsKept.length}`],
    ['length to cut', run(was.cutLength, after.job.units), run(is.cutLength, after.job.units)],
  ];
  return pairs
    .filter(([, from, to]) => from !== to)
    .map(([label, from, to]) => ({
      kind: 'changed',
      subject: 'plan',
      text: `Plan: ${label} ${to} instead of ${from}.`,
      places: [],
    }));
}

function layoutOf(worked: WorkedOut, wallId: string, zoneId: string): ZoneLayout | null | undefined {
  const wall = worked.walls.find(({ survey }) => survey.wall.id === wallId);
  return wall?.zones.find(({ area }) => area.zone.id === zoneId)?.layout;
}

function run(length: Hundredth, units: LengthUnits = 'mm'): string {
  return units === 'ft-in'
    ? `${figure(Math.round(length / (120 * inch)) / 10)} ft`
    : `${figure(Math.round(length / 1e4) / 10)} m`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
