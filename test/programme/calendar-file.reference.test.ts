import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarFile } from '../../core/programme/calendar-file';
import { planProgramme } from '../../core/programme/programme';
import type { Job } from '../../core/job/schema';
import { jobOf, productOf, wallsOf } from './small-zone';

const finish = productOf({
  id: 'finish',
  name: 'Finish; two-component, white',
  layer: 'writable',
  coats: 3,
  recoatLeast: 6,
  cure: 120,
});

function fileOf(
  fields: Partial<Job> = {},
  programme: Record<string, unknown> = { start: '2026-03-02' },
): string {
  const job = {
    ...jobOf(programme, { products: [finish], layers: [{ kind: 'writable', product: 'finish' }] }),
    ...fields,
  } as Job;
  return calendarFile(job, planProgramme(job, wallsOf(job)))!;
}

/** As ical.js 2.2.1 (MPL-2.0), an independent parser, reads it. */
function eventsOf(file: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(file) as unknown[]);
  expect(calendar.name).toBe('vcalendar');
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
}

describe('the calendar file, as ical.js reads it', () => {
  it('has every visit and ready date on its days, the end exclusive', () => {
    const rows = eventsOf(fileOf()).map(({ summary, startDate, endDate }) => [
      summary,
      String(startDate),
      String(endDate),
      startDate.isDate && endDate.isDate,
    ]);
    expect(rows).toEqual([
      ['Small print room: order materials', '2026-02-17', '2026-02-18', true],
      ['Small print room: delivery of materials', '2026-02-27', '2026-02-28', true],
      ['Small print room: visit 1 of 2', '2026-03-02', '2026-03-04', true],
      ['Small print room: visit 2 of 2', '2026-03-09', '2026-03-10', true],
      ['Small print room: ready for writing', '2026-03-08', '2026-03-09', true],
      ['Small print room: handover', '2026-03-09', '2026-03-10', true],
    ]);
  });

  it('gives back texts with every sign that is escaped', () => {
    const [, , visit] = eventsOf(fileOf({ name: 'Proofs; type, and \\ "more"' }));
    expect(visit!.summary).toBe('Proofs; type, and \\ "more": visit 1 of 2');
    expect(visit!.description.split('\n')[1]).toBe('A-Z1: Coat 1 of 3: Finish; two-component, white');
  });

  it('gives back any name whole', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 }), (text) => {
        // Controls are left out on purpose.
        fc.pre(!/[\p{Cc}\p{Cs}]/u.test(text));
        for (const event of eventsOf(fileOf({ name: text })))
          expect(event.summary.startsWith(`${text}: `)).toBe(true);
      }),
      { numRuns: 60, seed: 41 },
    );
  });

  it('has the date of the job for its stamp, and each UID once and the same every time', () => {
    const events = eventsOf(fileOf());
    const stamps = events.map((event) => String(event.component.getFirstPropertyValue('dtstamp')));
    expect(new Set(stamps)).toEqual(new Set(['2026-02-16T00:00:00Z']));
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    expect(fileOf()).toBe(fileOf());
    expect(eventsOf(fileOf({ name: 'Another' }))[0]!.uid).not.toBe(events[0]!.uid);
  });
});

describe('the form of RFC 5545', () => {
  it('3.1: every line ends in CRLF and has at most 75 octets, and no character is torn apart', () => {
    const file = fileOf({ name: 'Druckwerkstatt „Ätzgrund“ 版画工房 🖨️ '.repeat(8) });
    expect(file.endsWith('\r\n')).toBe(true);
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const lines = file.split('\r\n');
    const octets = lines.map((line) => new TextEncoder().encode(line).length);
    expect(Math.max(...octets)).toBeLessThanOrEqual(75);
    expect(Math.max(...octets)).toBeGreaterThan(70);
    for (const line of lines) expect(line).not.toMatch(/\p{Cs}/u);
  });
});

describe('a programme without days', () => {
  it('has no calendar file: a calendar needs days', () => {
    const job = jobOf(undefined, { products: [finish], layers: [{ kind: 'writable', product: 'finish' }] });
    expect(calendarFile(job, planProgramme(job, wallsOf(job)))).toBeNull();
    const empty = jobOf({ start: '2026-03-02' });
    expect(calendarFile(empty, planProgramme(empty, wallsOf(empty)))).toBeNull();
  });
});
