import { cutPatterns } from '../../core/drawings/cut-patterns';
import { countText } from '../../core/drawings/figure-text';
import { figuresOf, type JobFigures } from '../../core/drawings/job-figures';
import type { LodeplanDocument } from '../../core/drawings/page';
import { proofText } from '../../core/drawings/proof-text';
import { polygonArea, regionArea } from '../../core/geometry/polygon';
import { buildUpKind } from '../../core/job/build-up-kinds';
import type { Job } from '../../core/job/schema';
import type { WorkedOut, WorkedWall } from '../../core/worked-out';
import { areaFigure, areaUnit, massFigure, metresFigure, percentFigure, withPoint } from '../look/figures';
import type { StationName } from '../job/open-job.svelte';
import { hangingFigure } from '../hanging/hanging-figure';
import { workedWall } from '../schedule/worked-zone';

/** The number that matters most at a station, and what stands under it. */
export interface KeyFigure {
  readonly heading: string;
  readonly figure: string;
  readonly unit: string;
  /** What proves it or what it leaves out, as a sentence; null if it needs none. */
  readonly proof: string | null;
  readonly rows: readonly { readonly label: string; readonly value: string }[];
}

/** Of every station that shows an elevation; of the others see below. */
export function keyFigure(
  station: Exclude<StationName, 'drawings' | 'price'>,
  worked: WorkedOut,
  wallId: string | undefined,
): KeyFigure | null {
  const wall = wallId === undefined ? undefined : workedWall(worked, wallId);
  if (station === 'survey') return wall ? surveyFigure(wall) : null;
  if (station === 'zones') return wall ? zonesFigure(wall) : null;
  if (station === 'hanging') return wall ? hangingFigure(wall) : null;
  return sheetsFigure(worked);
}

/** What there is to print, and the order that goes with it. @param documents null while they are being drawn */
export function drawingsFigure(
  worked: WorkedOut,
  documents: readonly LodeplanDocument[] | null,
): KeyFigure | null {
  if (worked.walls.length === 0) return null;
  const figures = figuresOf(worked);
  const pages = documents?.reduce((sum, document) => sum + document.pages.length, 0) ?? 0;
  return {
    heading: 'Documents, whole job',
    figure: documents ? String(documents.length) : '…',
    unit: documents ? `documents on ${countText(pages, 'page')}` : 'being drawn',
    proof: figures.panels === 0 ? nothingToOrder.proof : null,
    rows:
      figures.panels === 0
        ? []
        : [
            {
              label: 'Stock sheets to order',
              value: `${figures.planned} + ${countText(figures.spares, 'spare')}`,
            },
            { label: 'Panels, of which cut', value: `${figures.panels}, ${figures.cut}` },
            { label: 'Pieces from the rack', value: String(figures.rackPieces) },
            { label: 'Offcuts to keep', value: String(figures.offcutsKept.length) },
            { label: 'Length to cut', value: metresFigure(figures.cutLength) },
          ],
  };
}

function surveyFigure({ survey }: WorkedWall): KeyFigure {
  const whole = polygonArea({ outer: survey.outline.ring, holes: [] });
  const { openings, fittings } = survey.wall;
  return {
    heading: 'This wall',
    figure: areaFigure(regionArea(survey.usable)),
    unit: `${areaUnit()} can be used`,
    proof: 'Openings, fittings and the rim are taken off with their clearances.',
    rows: [
      { label: 'Whole wall', value: `${areaFigure(whole)} ${areaUnit()}` },
      { label: 'Openings', value: String(openings.length) },
      { label: 'Fittings', value: String(fittings.length) },
    ],
  };
}

function zonesFigure({ zones }: WorkedWall): KeyFigure {
  const areaWhere = (test: (kind: ReturnType<typeof buildUpKind>) => boolean) =>
    zones
      .filter(({ area }) => test(buildUpKind(area.zone.buildUp)))
      .reduce((sum, { area }) => sum + regionArea(area.area), 0);
  return {
    heading: 'This wall',
    figure: areaFigure(areaWhere(({ magnetic }) => magnetic !== 'none')),
    unit: `${areaUnit()} hold magnets`,
    proof: null,
    rows: [
      {
        label: 'On steel panels',
        value: `${areaFigure(areaWhere(({ magnetic }) => magnetic === 'steel'))} ${areaUnit()}`,
      },
      {
        label: 'On coating or film',
        value: `${areaFigure(areaWhere(({ magnetic }) => magnetic === 'coating'))} ${areaUnit()}`,
      },
      {
        label: 'To write on',
        value: `${areaFigure(areaWhere(({ surface }) => surface === 'writable'))} ${areaUnit()}`,
      },
      {
        label: 'To chalk on',
        value: `${areaFigure(areaWhere(({ surface }) => surface === 'chalk'))} ${areaUnit()}`,
      },
    ],
  };
}

function sheetsFigure(worked: WorkedOut): KeyFigure {
  const figures = figuresOf(worked);
  if (figures.panels === 0) return nothingToOrder;
  return {
    heading: headingOf(figures, worked.job),
    figure: String(figures.toOrder),
    unit: `${figures.toOrder === 1 ? 'stock sheet' : 'stock sheets'} to order: ${figures.planned} + ${countText(figures.spares, 'spare')}`,
    proof: withPoint(proofText(worked)),
    rows: [
      ...(figures.order.length > 1 ? orderRows(figures, worked.job) : []),
      { label: 'Panels, of which cut', value: `${figures.panels}, ${figures.cut}` },
      ...(figures.slivers > 0 ? [{ label: 'Slivers', value: String(figures.slivers) }] : []),
      ...(figures.rackPieces > 0
        ? [{ label: 'Pieces from the rack', value: String(figures.rackPieces) }]
        : []),
      {
        label: figures.keptArea > 0 ? 'Waste, kept offcuts not counted' : 'Waste',
        value: percentFigure(figures.wasteShare),
      },
      { label: 'Offcuts to keep', value: String(figures.offcutsKept.length) },
      { label: 'Length to cut', value: metresFigure(figures.cutLength) },
      ...alikeRow(worked),
      {
        label: 'Steel on the wall',
        value: figures.steelMass === null ? 'thickness missing' : massFigure(figures.steelMass),
      },
    ],
  };
}

/** How often the workshop repeats what it has set up once; nothing where no two stock sheets are cut alike. */
function alikeRow(worked: WorkedOut): KeyFigure['rows'] {
  const { patterns } = cutPatterns(worked);
  const most = Math.max(0, ...patterns.map(({ sheets }) => sheets.length));
  if (most < 2) return [];
  return [{ label: 'Cutting patterns', value: `${patterns.length}; up to ${most} cut alike` }];
}

const nothingToOrder: KeyFigure = {
  heading: 'Stock sheets, whole job',
  figure: '0',
  unit: 'stock sheets to order',
  proof: 'No zone has steel panels yet: put one in at Zones.',
  rows: [],
};

function headingOf({ order }: JobFigures, job: Job): string {
  const only = order.length === 1 ? job.stock.find(({ id }) => id === order[0]!.stock) : undefined;
  return only ? `${only.name || only.id}, whole job` : 'Stock sheets, whole job';
}

function orderRows({ order }: JobFigures, job: Job) {
  return order.map(({ stock, plan, spares }) => ({
    label: job.stock.find(({ id }) => id === stock)?.name || stock,
    value: `${plan} + ${spares}`,
  }));
}
