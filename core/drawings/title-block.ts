import { chosenTitle } from '../job/alternatives';
import type { Job } from '../job/schema';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import { notesBlock, type Block } from './notes-block';
import type { Item, Page, Stroke, Text, TextMeasure } from './page';
import { cornersOf, drawingSpace, pageSize, scaleDesignation, type PaperBox, type Scale } from './paper';
import { paperFigures } from './paper-figures';
import type { KeyEntry } from './drawing-key';
import { fitText } from './text';

/** What frame, title block and notes of one page say. An empty field is printed as a ruled blank. */
export interface SheetInfo extends Pick<Page, 'format' | 'landscape'> {
  /** ISO 7200 fields; `title` should keep to 25 characters. */
  readonly legalOwner: string;
  readonly identification: string;
  readonly revision: string;
  readonly dateOfIssue: string;
  readonly title: string;
  readonly supplementaryTitle: string;
  readonly documentType: string;
  readonly createdBy: string;
  readonly approvedBy: string;
  /** null: the page shows nothing to scale and has no scale bar. */
  readonly scale: Scale | null;
  /** Instead of the scale, for pages whose drawings say theirs themselves: `as shown`. */
  readonly scaleText?: string;
  readonly units: LengthUnits;
  /** From 1. */
  readonly sheet: number;
  readonly sheets: number;
  /** Sentences on how to read the page, and cautions; either may be empty. */
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  /** Signs of the drawing, explained. */
  readonly key?: readonly KeyEntry[];
  /** What must be known of all that the page says: `Budget until surveyed`. */
  readonly status?: string;
}

/** Width of the title block, ISO 7200:2004. */
export const titleBlockWidth: Mm = 180;

const smallRow = 11;
const titleRow = 18.5;
export const titleBlockHeight: Mm = 2 * smallRow + titleRow;

/** Between neighbouring blocks of a page. */
const gap = 5;

/**
 * The fields that a job knows. Who owns, draws and approves the document is not part of a job: those stay
 * blank for pen and ink.
 */
export function fieldsOfJob(
  job: Job,
): Pick<
  SheetInfo,
  | 'legalOwner'
  | 'identification'
  | 'revision'
  | 'dateOfIssue'
  | 'createdBy'
  | 'approvedBy'
  | 'supplementaryTitle'
  | 'units'
> {
  return {
    legalOwner: '',
    identification: job.reference,
    revision: job.revision,
    units: job.units ?? 'mm',
    dateOfIssue: job.date,
    createdBy: '',
    approvedBy: '',
    supplementaryTitle: [job.name, chosenTitle(job), job.client].filter(Boolean).join(', '),
  };
}

/**
 * Frame, centring marks, title block in the lower right corner, scale bar, notes and cautions; and the space
 * that is left for the drawing above them. The notes stand left of the title block or above it, whichever
 * leaves more.
 *
 * @returns `corner`: what is left between title block and drawing where the notes stand beside it
 */
export function frameAndTitleBlock(
  info: SheetInfo,
  measure: TextMeasure,
): { items: Item[]; space: PaperBox; corner?: PaperBox } {
  const frame = drawingSpace(info);
  const block: PaperBox = {
    left: frame.right - titleBlockWidth,
    right: frame.right,
    bottom: frame.bottom,
    top: frame.bottom + titleBlockHeight,
  };
  const notes = placeNotes(info, frame, block, measure);
  return {
    items: [...frameLines(info, frame), ...titleBlock(info, block, measure), ...notes.items],
    space: {
      left: frame.left + gap,
      right: frame.right - gap,
      bottom: notes.top + 3,
      top: frame.top - 3,
    },
    ...(notes.isBeside && { corner: { ...block, bottom: block.top + 3, top: notes.top + 3 } }),
  };
}

function placeNotes(
  info: SheetInfo,
  frame: PaperBox,
  block: PaperBox,
  measure: TextMeasure,
): { items: Item[]; top: Mm; isBeside: boolean } {
  const beside = block.left - frame.left - 2 * gap;
  const above = frame.right - frame.left - 2 * gap;
  const besideBlock = beside >= 70 ? notesBlock(info, beside, measure) : undefined;
  const aboveBlock = notesBlock(info, above, measure);
  const heightBeside = besideBlock
    ? Math.max(titleBlockHeight, besideBlock.height + 4)
    : Number.POSITIVE_INFINITY;
  const heightAbove =
    aboveBlock.height === 0 ? titleBlockHeight : titleBlockHeight + aboveBlock.height + 2 * gap;
  const left = frame.left + gap;
  if (besideBlock && heightBeside <= heightAbove) {
    const top = frame.bottom + heightBeside;
    return {
      items: besideBlock.at(left, Math.min(top, frame.bottom + besideBlock.height + 3)),
      top,
      isBeside: true,
    };
  }
  const top = frame.bottom + heightAbove;
  return { items: placeAbove(aboveBlock, left, block.top + gap), top, isBeside: false };
}

function placeAbove(block: Block, left: Mm, bottom: Mm): Item[] {
  return block.height === 0 ? [] : block.at(left, bottom + block.height);
}

function frameLines(info: SheetInfo, frame: PaperBox): Item[] {
  const { width, height } = pageSize(info);
  const middleX = width / 2;
  const middleY = height / 2;
  // Centring marks of ISO 5457, as far out as common printers reach.
  const mark = (x1: Mm, y1: Mm, x2: Mm, y2: Mm): Stroke => line(x1, y1, x2, y2, 0.7);
  return [
    { kind: 'stroke', points: cornersOf(frame), closed: true, width: 0.7 },
    mark(middleX, frame.bottom, middleX, frame.bottom - 5),
    mark(middleX, frame.top, middleX, frame.top + 5),
    mark(frame.left, middleY, frame.left - 5, middleY),
    mark(frame.right, middleY, frame.right + 5, middleY),
  ];
}

interface Field {
  readonly label: string;
  readonly value: string;
  readonly width: Mm;
}

function titleBlock(info: SheetInfo, box: PaperBox, measure: TextMeasure): Item[] {
  const scale = info.scaleText ?? (info.scale ? scaleDesignation(info.scale) : 'not to scale');
  const rows: Field[][] = [
    [
      { label: 'Document type', value: info.documentType, width: 50 },
      { label: 'Identification no.', value: info.identification, width: 45 },
      { label: 'Revision', value: info.revision, width: 20 },
      { label: 'Date of issue', value: info.dateOfIssue, width: 35 },
      { label: 'Sheet', value: `${info.sheet} of ${info.sheets}`, width: 30 },
    ],
    [
      { label: 'Created by', value: info.createdBy, width: 50 },
      { label: 'Approved by', value: info.approvedBy, width: 45 },
      { label: 'Unit of lengths', value: paperFigures(info.units).unitName, width: 40 },
      { label: 'Scale', value: scale, width: 45 },
    ],
  ];
  const items: Item[] = [{ kind: 'stroke', points: cornersOf(box), closed: true, width: 0.7 }];
  rows.forEach((row, i) => {
    const bottom = box.bottom + i * smallRow;
    items.push(...rowOfFields(row, box.left, bottom, smallRow, measure));
    items.push(line(box.left, bottom + smallRow, box.right, bottom + smallRow, 0.35));
  });
  items.push(...titleFields(info, box, measure));
  return items;
}

function titleFields(info: SheetInfo, box: PaperBox, measure: TextMeasure): Item[] {
  const ownerWidth = 50;
  const left = box.left + ownerWidth;
  const room = box.right - left - 2 * padding;
  const status: Text = {
    kind: 'text',
    text: info.status ?? '',
    at: { x: box.right - padding, y: box.top - 17 },
    height: 3.5,
    weight: 'semi-bold',
    anchor: 'end',
    colour: 'red-lead',
  };
  // What must be known goes first: the job's name gives way to it.
  const stated = fitText(status, room * 0.6, measure);
  const besideStatus = info.status ? measure(stated.text, stated.height, stated) + 4 : 0;
  const title: Text = {
    kind: 'text',
    text: info.title,
    at: { x: left + padding, y: box.top - 10.4 },
    height: 5,
    weight: 'semi-bold',
  };
  const supplement: Text = {
    kind: 'text',
    text: info.supplementaryTitle,
    at: { x: left + padding, y: box.top - 17 },
    height: 3.5,
  };
  return [
    ...rowOfFields(
      [
        { label: 'Legal owner', value: info.legalOwner, width: ownerWidth },
        { label: 'Title', value: '', width: titleBlockWidth - ownerWidth },
      ],
      box.left,
      box.top - titleRow,
      titleRow,
      measure,
    ),
    fitText(title, room, measure),
    ...(info.supplementaryTitle ? [fitText(supplement, room - besideStatus, measure)] : []),
    ...(info.status ? [stated] : []),
  ];
}

const padding = 1.5;

function rowOfFields(
  fields: readonly Field[],
  left: Mm,
  bottom: Mm,
  height: Mm,
  measure: TextMeasure,
): Item[] {
  const items: Item[] = [];
  let x = left;
  for (const { label, value, width } of fields) {
    const at = (y: Mm) => ({ x: x + padding, y });
    const name: Text = {
      kind: 'text',
      text: label,
      at: at(bottom + height - 3.7),
      height: 2.5,
      face: 'condensed',
      colour: 'soft',
    };
    items.push(fitText(name, width - 2 * padding, measure));
    if (value) {
      const entry: Text = { kind: 'text', text: value, at: at(bottom + height - 8.9), height: 3.5 };
      items.push(fitText(entry, width - 2 * padding, measure));
    }
    if (x > left) items.push(line(x, bottom, x, bottom + height, 0.35));
    x += width;
  }
  return items;
}

function line(x1: Mm, y1: Mm, x2: Mm, y2: Mm, width: Stroke['width']): Stroke {
  return {
    kind: 'stroke',
    points: [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ],
    width,
  };
}
