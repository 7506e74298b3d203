import { buildUpOf } from '../build-up/resolve';
import { weekdayOf } from '../job/day';
import { dayMinutes, lastDayOf, type Minute } from '../programme/calendar';
import { dayText, endText } from '../programme/day-text';
import type { DatedTask, Programme } from '../programme/programme';
import type { Settings } from '../programme/settings';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import { amountText } from './amount-text';
import { headingBlock, listBlocks, spaceBlock } from './client-blocks';
import { amountsOf, mixesOf, placeOfTask, type DayStep, type WorkDay } from './day-plan';
import { formatMm } from './figures';
import { layHeading, layRows, type FlowBlock, type FlowColumn, type FlowRow } from './flow-table';
import type { Item, TextMeasure } from './page';

/** Of all its tables, mm. */
export const dayWidth = 170;
const width = dayWidth;
const box = 3;
const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** `Day 3: Tuesday 2026-03-03`, `Day 3` of a job that names no day. */
export function dayTitle({ day, number }: WorkDay, settings: Settings): string {
  if (settings.dayOne !== null) return `D${dayText(day, settings).slice(1)}`;
  return `Day ${number}: ${weekdays[weekdayOf(day) - 1]} ${dayText(day, settings)}`;
}

/** All that a day sheet says under its title, in the order in which it is wanted. */
export interface DayBlocks {
  /** What is done and mixed. */
  readonly work: readonly FlowBlock[];
  /** What must not be touched, readings, notes. */
  readonly watch: readonly FlowBlock[];
}

export function dayBlocks(
  worked: WorkedOut,
  day: WorkDay,
  programme: Programme,
  takeOff: TakeOff,
  measure: TextMeasure,
): DayBlocks {
  const table = (
    heading: string,
    columns: readonly FlowColumn[],
    rows: readonly FlowRow[],
    colour: 'ink' | 'red-lead' = 'ink',
  ): FlowBlock[] =>
    rows.length === 0
      ? []
      : [
          headingBlock(heading, width, colour),
          { ...layHeading(columns, measure), keepWithNext: true },
          ...layRows(columns, rows, measure),
        ];
  const steps = table('Today, in this order', stepColumns, stepRows(worked, day, takeOff));
  const ticks = day.steps.length;
  const work = [
    // The rows of the table stand at its end, each with a box to tick.
    ...steps.map((block, i) => (i >= steps.length - ticks ? ticked(block) : block)),
    ...table('Mix', mixColumns, mixRows(worked, day, takeOff)),
  ];
  const watch = [
    ...table('Not yet: leave alone what dries', waitColumns, waitRows(worked, day, programme), 'red-lead'),
    ...table('Readings', readingColumns, readingRows),
    spaceBlock(2),
    ...listBlocks(limitsOf(worked, day), width, measure),
    ...table('Done and noted', noteColumns, noteRows),
  ];
  return { work, watch };
}

const stepColumns: readonly FlowColumn[] = [
  { heading: '', align: 'left', width: 6 },
  { heading: 'Time', align: 'left', width: 24 },
  { heading: 'Step', align: 'left', width: 68 },
  { heading: 'Where', align: 'left', width: 48 },
  { heading: 'Takes', align: 'left', width: 24 },
];

function stepRows({ job }: WorkedOut, { steps }: WorkDay, takeOff: TakeOff): FlowRow[] {
  return steps.map((step): FlowRow => ({
    kind: 'row',
    cells: [
      '',
      `${time(step.start)}–${time(step.finish)}`,
      `${step.task.name}${step.begunBefore ? ' (begun before)' : ''}${step.goesOn ? ' (goes on the next day)' : ''}`,
      placeOfTask(job, step.task) || 'whole job',
      step.begunBefore ? '' : amountWords(step, takeOff),
    ],
  }));
}

function amountWords({ task }: DayStep, takeOff: TakeOff): string {
  const lots = amountsOf(task, takeOff);
  return lots
    .map(({ name, amount, unit }) =>
      lots.length === 1 && task.name.includes(name)
        ? amountText(amount, unit)
        : `${name} ${amountText(amount, unit)}`,
    )
    .join('; ');
}

const mixColumns: readonly FlowColumn[] = [
  { heading: 'Mix', align: 'left', width: 18 },
  { heading: 'Product and where', align: 'left', width: 64 },
  { heading: 'Amount', align: 'right', width: 18 },
  { heading: 'Component A + B', align: 'left', width: 34 },
  { heading: 'Lay within', align: 'right', width: 18 },
  { heading: 'Tape off by', align: 'right', width: 18 },
];

function mixRows({ job }: WorkedOut, { steps }: WorkDay, takeOff: TakeOff): FlowRow[] {
  const minutes = (of: number) => `${Math.floor(of)}\u00A0min`;
  return steps
    .filter(({ begunBefore }) => !begunBefore)
    .flatMap(({ task }) =>
      mixesOf(task, job, takeOff).map((mix): FlowRow => ({
        kind: 'row',
        cells: [
          mix.isPart ? `part of ${mix.number}` : String(mix.number),
          `${mix.product}, ${placeOfTask(job, task)}`,
          amountText(mix.amount, mix.unit),
          mix.components?.map((amount) => amountText(amount, mix.componentUnit)).join(' + ') ??
            'by the ratio on the tin',
          minutes(mix.potLife),
          mix.maskingOff === null ? '–' : minutes(mix.maskingOff),
        ],
      })),
    );
}

const waitColumns: readonly FlowColumn[] = [
  { heading: 'What dries, hardens or cures', align: 'left', width: 52 },
  { heading: 'Where', align: 'left', width: 40 },
  { heading: 'until', align: 'left', width: 28 },
  { heading: 'not before then', align: 'left', width: 50 },
];

const waitWords = { dry: 'dries', harden: 'hardens', cure: 'cures' } as const;

/** What is wet, and what would be next and has to wait for it. */
function waitRows({ job }: WorkedOut, { day, waits }: WorkDay, { tasks, settings }: Programme): FlowRow[] {
  return waits.map(({ kind, after, before, finish }): FlowRow => {
    const isToday = lastDayOf(finish) === day;
    return {
      kind: 'row',
      cells: [
        `${tasks[after]!.name}: ${waitWords[kind]}`,
        placeOfTask(job, tasks[after]!) || 'whole job',
        isToday ? `today ${endText(finish, settings).slice(-5)}` : endText(finish, settings),
        nextInWords(tasks[before]!),
      ],
    };
  });
}

function nextInWords({ kind, name }: DatedTask): string {
  if (kind === 'magnets') return 'no magnets';
  if (kind === 'writing') return 'no writing';
  return kind === 'cured' ? 'no use' : name;
}

const readingColumns: readonly FlowColumn[] = [
  { heading: 'Readings', align: 'left', width: 34 },
  { heading: 'Time', align: 'left', width: 34 },
  { heading: 'Air, °C', align: 'left', width: 34 },
  { heading: 'Relative humidity, %', align: 'left', width: 34 },
  { heading: 'Face of the wall, °C', align: 'left', width: 34 },
];

const readingRows: readonly FlowRow[] = ['Before work', 'Midday', 'End of work'].map((when) => ({
  kind: 'row',
  cells: [when, '', '', '', ''],
}));

/** What the products of the day want of the room. */
function limitsOf({ job }: WorkedOut, { steps }: WorkDay): string[] {
  const words = steps.flatMap(({ task }) => {
    const wall = job.walls.find(({ id }) => id === task.wall);
    const zone = wall?.zones.find(({ id }) => id === task.zone);
    const product =
      task.uses && wall && zone
        ? buildUpOf(job, zone, wall.ground).layers[task.uses.layer]?.product
        : undefined;
    if (!product) return [];
    const limits = [
      ...(product.temperatureLeast === undefined
        ? []
        : [`at least ${formatMm(product.temperatureLeast)} °C`]),
      ...(product.humidityMost === undefined ? [] : [`at most ${formatMm(product.humidityMost)} % humidity`]),
    ];
    return limits.length > 0 ? [`${product.name}: ${limits.join(', ')}.`] : [];
  });
  return [...new Set(words)];
}

const noteColumns: readonly FlowColumn[] = [
  { heading: 'People on site', align: 'left', width: 56 },
  { heading: 'Work ended at', align: 'left', width: 56 },
  { heading: 'Signed', align: 'left', width: 58 },
];
const noteRows: readonly FlowRow[] = [
  { kind: 'row', cells: ['', '', ''] },
  { kind: 'row', cells: ['What differed from the plan:', '', ''] },
];

/** With a box at the beginning of the row. */
function ticked(block: FlowBlock): FlowBlock {
  return {
    ...block,
    at: (left, top): Item[] => {
      const y = top - 1.1;
      const corners = [
        { x: left, y },
        { x: left + box, y },
        { x: left + box, y: y - box },
        { x: left, y: y - box },
      ];
      return [...block.at(left, top), { kind: 'stroke', points: corners, closed: true, width: 0.35 }];
    },
  };
}

/** Of a minute of some day. */
function time(minute: Minute): string {
  const of = ((minute % dayMinutes) + dayMinutes) % dayMinutes;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(of / 60))}:${two(of % 60)}`;
}
