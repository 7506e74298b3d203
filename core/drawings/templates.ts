import { templatePaperOf } from '../job/template-paper';
import type { WorkedOut } from '../worked-out';
import { cautions, checkOnSite } from './cautions';
import { dealOut, layHeading, layRows, stack, type FlowColumn, type FlowRow } from './flow-table';
import type { LodeplanDocument, Page, TextMeasure } from './page';
import { paperFigures } from './paper-figures';
import { closingSign, signedMark } from './panel-marks';
import { jobTemplates, type Template } from './template-shapes';
import { templateTiles } from './template-tiles';
import { tradePage, type TradeDocument } from './trade-page';

const name = 'templates';

/**
 * Notches and round cut-outs at full size, to be laid on the steel and drawn round: where each goes on which panel, then
 * template after template over as many pages as it takes. No pages if no panel has such a cut-out.
 */
export function templates(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const { job } = worked;
  const title = `${job.name}: full-size templates`;
  const { shapes, byRule } = jobTemplates(worked);
  if (shapes.length === 0) return { name, title, pages: [] };
  const paper = templatePaperOf(job);
  const document: TradeDocument = {
    job,
    format: paper.paper,
    title: 'Full-size templates',
    documentType: 'Templates',
    notes: [
      'Print at full size (100 %, “actual size”), without fitting to the page. Measure the bar of 100 mm on every page before you cut: if it is not 100 mm, do not use the page.',
      'Templates show the face of the panel. Draw the two setting lines on the panel at the distances of this table and lay the template on them. What is hatched is cut away.',
      ...(shapes.some(({ uses }) => uses.some(({ panel }) => panel.closing))
        ? [`${closingSign}: closing panel; measure on the wall first, then lay the template.`]
        : []),
      ...(byRule > 0
        ? ['Large straight cut-outs are not here: set them out with rule and square from the cut sheets.']
        : []),
    ],
    cautions: [checkOnSite, cautions.edges],
  };
  const tiles = shapes.map((shape, i) => templateTiles(shape, i + 1, job, paper, measure));
  const rows = shapes.flatMap((shape, i) => rowsOf(shape, i + 1, tiles[i]!.length, worked));
  const room = (sheet: number) => {
    const { top, bottom } = tradePage(document, sheet, 2, measure).space;
    return top - bottom;
  };
  const heading = layHeading(columns, measure);
  const dealt = dealOut(layRows(columns, rows, measure), room(2) - heading.height, room(1) - heading.height);
  const index = dealt.map((blocks, i): Page => {
    const { items, space } = tradePage(document, i + 1, dealt.length, measure, 'full size');
    return {
      format: paper.paper,
      landscape: false,
      items: [...items, ...stack([heading, ...blocks], space.left, space.top)],
    };
  });
  return { name, title, pages: [...index, ...tiles.flat()] };
}

const columns: readonly FlowColumn[] = [
  { heading: 'Panel', align: 'left', width: 44 },
  { heading: 'Upright setting line from left edge', align: 'right', width: 62 },
  { heading: 'Level setting line from foot edge', align: 'right', width: 64 },
];

function rowsOf(shape: Template, number: number, pages: number, { job }: WorkedOut): FlowRow[] {
  const { length, unit } = paperFigures(job.units);
  return [
    {
      kind: 'group',
      text: `T${number}: ${shape.words(length)}`,
      aside: `${pages === 1 ? '1 page' : `${pages} pages`}, ${unit}`,
    },
    ...shape.uses.map(({ panel, x, y }): FlowRow => ({
      kind: 'row',
      cells: [signedMark(panel), length(x), length(y)],
    })),
  ];
}
