import { dayNumber, isoDay } from '../job/day';
import type { Job } from '../job/schema';
import { dayOf, lastDayOf, type Minute } from './calendar';
import type { Programme } from './programme';

/** An entry of whole days. Day numbers, both included. */
interface Entry {
  readonly id: string;
  readonly summary: string;
  readonly description: string;
  readonly first: number;
  readonly last: number;
}

/**
 * Visits and ready dates for any calendar program: an iCalendar file of all-day events.
 *
 * Source: RFC 5545, 3.1 (lines end in CRLF and are folded at 75 octets), 3.3.11 (escaping), 3.6.1 (an all-day event ends on the
 * day after its last). DTSTAMP is the job's date, as there is no clock here; UIDs stay the same, so that a newer file
 * replaces the entries of an older one.
 * @returns null if the job names no day to begin on, or has nothing to do: a calendar needs days
 */
export function calendarFile(job: Job, programme: Programme): string | null {
  if (programme.settings.dayOne !== null || programme.tasks.length === 0) return null;
  const stamp = `${plainDay(dayNumber(job.date) ?? programme.visits[0]!.first)}T000000Z`;
  const own = fingerprint([job.name, job.reference, job.client].join('\n'));
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Lodeplan//Programme//EN',
    'CALSCALE:GREGORIAN',
    ...entriesOf(job, programme).flatMap(({ id, summary, description, first, last }) => [
      'BEGIN:VEVENT',
      `UID:${id}-${own}@lodeplan.invalid`,
      `DTSTAMP:${stamp}`,
      `DTSTART;VALUE=DATE:${plainDay(first)}`,
      `DTEND;VALUE=DATE:${plainDay(last + 1)}`,
      `SUMMARY:${escaped(summary)}`,
      `DESCRIPTION:${escaped(description)}`,
      'TRANSP:OPAQUE',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function entriesOf(job: Job, { visits, tasks, ready, handover, supply }: Programme): Entry[] {
  const count = visits.length;
  const visitEntries = visits.map(({ first, last, tasks: done }, i): Entry => {
    const names = [
      ...new Set(done.map((task) => workIn(tasks[task]!.wall, tasks[task]!.zone, tasks[task]!.name))),
    ];
    return {
      id: `visit-${i + 1}`,
      summary: `${job.name}: visit ${i + 1} of ${count}`,
      description: names.join('\n'),
      first,
      last,
    };
  });
  const onDay = (id: string, what: string, day: number): Entry => ({
    id,
    summary: `${job.name}: ${what}`,
    description: what,
    first: day,
    last: day,
  });
  const onceDone = (id: string, what: string, minute: Minute | null) =>
    minute === null ? [] : [onDay(id, what, lastDayOf(minute))];
  return [
    onDay('order', 'order materials', supply.order),
    onDay('delivery', 'delivery of materials', dayOf(supply.delivery)),
    ...visitEntries,
    ...onceDone('magnets', 'ready for magnets', ready.magnets),
    ...onceDone('writing', 'ready for writing', ready.writing),
    ...onceDone('handover', 'handover', handover),
  ];
}

function workIn(wall: string | undefined, zone: string | undefined, name: string): string {
  return wall === undefined ? name : `${wall}-${zone}: ${name}`;
}

function plainDay(day: number): string {
  return isoDay(day).replaceAll('-', '');
}

/** RFC 5545, 3.3.11; controls that no calendar takes are left out. */
function escaped(text: string): string {
  return (
    text
      .replace(/\r\n?/g, '\n')
      // eslint-disable-next-line no-control-regex
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
      .replace(/[\\;,]/g, '\\$&')
      .replace(/\n/g, '\\n')
  );
}

/** Octets of UTF-8 in a line, without its end. */
const longestLine = 75;

/** A line in pieces, each but the first after a space; no character is torn apart. */
function folded(line: string): string {
  const pieces: string[] = [];
  let piece = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character.codePointAt(0)!);
    if (octets + size > longestLine) {
      pieces.push(piece);
      piece = '';
      octets = 1;
    }
    piece += character;
    octets += size;
  }
  return [...pieces, piece].join('\r\n ');
}

function octetsOf(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}

/** FNV-1a, 32 bits: tells jobs apart, no more. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  }
  return hash.toString(16).padStart(8, '0');
}
