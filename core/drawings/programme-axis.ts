import { dayMinutes, isWorkingDay, type Minute } from '../programme/calendar';
import { dayText } from '../programme/day-text';
import type { Settings } from '../programme/settings';
import { weekdayOf } from '../job/day';
import type { Mm } from '../units';
import { hatch } from './hatch';
import type { Item, TextMeasure } from './page';
import { cornersOf, type PaperBox } from './paper';

/** Days along the top of a bar chart. */
export interface TimeAxis {
  readonly left: Mm;
  readonly perDay: Mm;
  /** Day numbers, `last` included. */
  readonly first: number;
  readonly last: number;
  readonly settings: Settings;
}

const labelHeight = 2.5;
const dayWidthForShading: Mm = 0.8;

export function timeAxis(left: Mm, width: Mm, first: number, last: number, settings: Settings): TimeAxis {
  return { left, perDay: width / (last + 1 - first), first, last, settings };
}

export function acrossAt({ left, perDay, first }: TimeAxis, minute: Minute): Mm {
  return left + (minute / dayMinutes - first) * perDay;
}

/** Days written above `top`, lines down from them to `bottom`, and days without work hatched. */
export function drawAxis(axis: TimeAxis, top: Mm, bottom: Mm, measure: TextMeasure): Item[] {
  const { left, perDay, first, last } = axis;
  const right = left + perDay * (last + 1 - first);
  return [
    ...idleDays(axis, top, bottom),
    ...labelledDays(axis, measure).flatMap(({ day, text }): Item[] => {
      const x = left + (day - first) * perDay;
      return [
        line(x, top + labelHeight + 1.5, x, bottom),
        { kind: 'text', text, at: { x: x + 0.8, y: top + 1.2 }, height: labelHeight, face: 'condensed' },
      ];
    }),
    line(left, top, right, top),
    line(right, top, right, bottom),
  ];
}

/** As many days as have room for their words: each, each second, or Mondays some weeks apart. */
function labelledDays(axis: TimeAxis, measure: TextMeasure): { day: number; text: string }[] {
  const { first, last, perDay, settings } = axis;
  const widest = Math.max(...[first, last].map((day) => widthOf(dayText(day, settings), measure))) + 2.5;
  const step = [1, 2, 7, 14, 28, 56, 112, 224, 448].find((days) => days * perDay >= widest) ?? 896;
  const start = step < 7 ? first : first + ((8 - weekdayOf(first)) % 7);
  const days: { day: number; text: string }[] = [];
  for (let day = start; day <= last && (last + 1 - day) * perDay >= widest; day += step) {
    days.push({ day, text: dayText(day, settings) });
  }
  return days;
}

function widthOf(text: string, measure: TextMeasure): Mm {
  return measure(text, labelHeight, { face: 'condensed' });
}

/** Weekends and holidays, neighbours as one. */
function idleDays({ left, perDay, first, last, settings }: TimeAxis, top: Mm, bottom: Mm): Item[] {
  if (perDay < dayWidthForShading) return [];
  const items: Item[] = [];
  for (let day = first; day <= last; day++) {
    if (isWorkingDay(settings.calendar, day)) continue;
    const from = day;
    while (day < last && !isWorkingDay(settings.calendar, day + 1)) day++;
    const box: PaperBox = {
      left: left + (from - first) * perDay,
      right: left + (day + 1 - first) * perDay,
      bottom,
      top,
    };
    items.push(...shading(box));
  }
  return items;
}

/** How a time without work is drawn. */
export function shading(box: PaperBox): Item[] {
  return hatch([cornersOf(box)], { spacing: 1.6, angle: 45, width: 0.18, colour: 'soft' });
}

function line(x1: Mm, y1: Mm, x2: Mm, y2: Mm): Item {
  return {
    kind: 'stroke',
    points: [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ],
    width: 0.18,
    colour: 'soft',
  };
}
