import { labelSheetOf, labelSize, type LabelSheet } from '../job/label-sheets';
import type { Mm } from '../units';
import type { WorkedOut } from '../worked-out';
import { bundlesOf, fixingPlaces, type FixingPlace } from './bundles';
import type { Item, LodeplanDocument, Page, Text, TextHeight, TextMeasure } from './page';
import { exactMm, paperFigures, sizeText } from './paper-figures';
import { boxHeight, boxWidth, pageSize, type PaperBox } from './paper';
import { panelMeasures } from './panel-measures';
import type { PlacedPanel } from './placed-panels';
import { fitText } from './text';

/** mm. Labels are punched and fed with some play; printers leave the rim of a page free. */
const inset = 2.5;
const rim = 5;

/**
 * Labels for sheets that are bought cut: one a panel, in the order in which bundle labels name them, from the label that the
 * job begins with. No lines are printed, as the sheet has its own. No pages if the job has no panels.
 */
export function panelLabels(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const sheet = labelSheetOf(worked.job);
  const fixing = fixingPlaces(worked);
  const panels = bundlesOf(worked).flatMap(({ panels: own }) => own);
  const skipped = (worked.job.printing?.labels?.first ?? 1) - 1;
  const perPage = sheet.columns * sheet.rows;
  const pages = Array.from(
    { length: panels.length === 0 ? 0 : Math.ceil((panels.length + skipped) / perPage) },
    (_, page): Page => ({
      format: sheet.paper,
      landscape: false,
      items: Array.from({ length: perPage }, (__, place) => {
        const placed = panels[page * perPage + place - skipped];
        return placed
          ? label(placed, fixing.get(placed.panel.mark), worked, labelBox(sheet, place), sheet, measure)
          : [];
      }).flat(),
    }),
  );
  return { name: 'panel-labels', title: `${worked.job.name}: panel labels`, pages };
}

/** Where a label lies on its sheet; places count row by row from 0. */
export function labelBox(sheet: LabelSheet, place: number): PaperBox {
  const { width, height } = labelSize(sheet);
  const left = sheet.left + (place % sheet.columns) * (width + sheet.gapAcross);
  const paper = pageSize({ format: sheet.paper, landscape: false });
  const top = paper.height - sheet.top - Math.floor(place / sheet.columns) * (height + sheet.gapDown);
  return { left, right: left + width, top, bottom: top - height };
}

/** Heights of mark, size and wall, largest first: the first that fit are taken. */
const heights: readonly (readonly [TextHeight, TextHeight, TextHeight])[] = [
  [14, 7, 5],
  [10, 5, 3.5],
  [7, 3.5, 3.5],
  [7, 3.5, 2.5],
  [5, 3.5, 2.5],
  [5, 2.5, 2.5],
  [3.5, 2.5, 2.5],
];

type Line = Pick<Text, 'text' | 'height' | 'weight' | 'colour'>;

function label(
  placed: PlacedPanel,
  fixing: FixingPlace | undefined,
  { job }: WorkedOut,
  box: PaperBox,
  sheet: LabelSheet,
  measure: TextMeasure,
): Item[] {
  const inside = insideOf(box, sheet);
  const arrowWidth = Math.min(12, boxWidth(inside) * 0.16);
  const room = boxWidth(inside) - arrowWidth - 2;
  const { panel, wall, zone } = placed;
  const revision = job.revision && `revision ${job.revision}`;
  const fits = (lines: readonly Mm[]) => stackHeight(lines) <= boxHeight(inside);
  const roomy = heights.find((three) => fits([...three, 2.5]));
  const [mark, size, place] = roomy ?? heights.find(fits) ?? heights.at(-1)!;
  const order = fixing && `fix ${fixing.place} of ${fixing.of}`;
  const more: Line[] = [
    ...(panel.closing
      ? [
          {
            text: [revision, 'closing panel: measure, then cut'].filter(Boolean).join(', '),
            weight: 'semi-bold',
            colour: 'red-lead',
          } as const,
        ]
      : []),
    { text: [revision, order, named('zone', zone.zone)].filter(Boolean).join(', ') },
    { text: job.name, colour: 'soft' as const },
  ].map((line) => ({ ...line, height: 2.5 }));
  const lines: Line[] = [
    { text: panel.mark, height: mark, weight: 'semi-bold' },
    { text: sizeOf(placed, job.units), height: size, weight: 'semi-bold' },
    { text: [roomy ? '' : revision, wallText(wall.wall)].filter(Boolean).join(', '), height: place },
    ...more,
  ];
  let y = inside.top;
  const texts: Text[] = [];
  for (const line of lines) {
    if (y - line.height - below(line.height) < inside.bottom - 1e-9 && texts.length >= 3) break;
    y -= line.height;
    texts.push(fitText({ kind: 'text', at: { x: inside.left, y }, ...line }, room, measure));
    y -= below(line.height);
  }
  return [...texts, ...upArrow({ ...inside, left: inside.right - arrowWidth }, measure)];
}

/** Room for its descenders under a line, and for accents of the next. */
function below(height: Mm): Mm {
  return 0.3 * height + 0.8;
}

function stackHeight(lines: readonly Mm[]): Mm {
  return lines.reduce((sum, height) => sum + height + below(height), 0);
}

function insideOf({ left, right, top, bottom }: PaperBox, { paper }: LabelSheet): PaperBox {
  const { width, height } = pageSize({ format: paper, landscape: false });
  return {
    left: Math.max(left + inset, rim),
    right: Math.min(right - inset, width - rim),
    // Capitals with accents rise above their line.
    top: Math.min(top - inset - 1, height - rim - 1),
    bottom: Math.max(bottom + inset, rim),
  };
}

/** Which edge is the upper one on the wall. */
function upArrow(box: PaperBox, measure: TextMeasure): Item[] {
  const x = (box.left + box.right) / 2;
  const half = Math.min(boxWidth(box) / 2, 4);
  const foot = box.bottom + 4.5;
  const top = Math.min(box.top, foot + 24);
  const neck = top - Math.min(1.6 * half, (top - foot) * 0.5);
  const shaft = half * 0.35;
  const word: Text = {
    kind: 'text',
    text: 'up',
    at: { x, y: box.bottom + 0.8 },
    height: 2.5,
    anchor: 'middle',
  };
  return [
    {
      kind: 'fill',
      rings: [
        [
          { x: x - shaft, y: foot },
          { x: x + shaft, y: foot },
          { x: x + shaft, y: neck },
          { x: x + half, y: neck },
          { x, y: top },
          { x: x - half, y: neck },
          { x: x - shaft, y: neck },
        ],
      ],
      colour: 'ink',
    },
    fitText(word, boxWidth(box), measure),
  ];
}

function sizeOf(placed: PlacedPanel, units: WorkedOut['job']['units']): string {
  const { width, height } = panelMeasures(placed.panel, placed);
  const figures = paperFigures(units);
  const exact = exactMm(width, height, figures.units);
  return `${sizeText(width, height, figures.cut)}${exact ? ` (${exact})` : ''}`;
}

function wallText(wall: { id: string; name: string; room?: string | undefined }): string {
  return [named('wall', wall), wall.room?.trim()].filter(Boolean).join(', ');
}

function named(word: string, { id, name }: { id: string; name: string }): string {
  return `${word} ${id}${name ? ` ${name}` : ''}`;
}
