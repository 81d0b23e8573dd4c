// The calendar file against another reader of iCalendar, and against the rules of RFC 5545 that readers forgive: lengths of lines
// in octets, line breaks, marks that need a backslash.

import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarEvent, civilDay, isoDate, writeCalendar } from '../../engine/index.ts';

const HEAD = { name: 'Season 2027', written: civilDay(2027, 1, 12) };

function event(more: Partial<CalendarEvent> = {}): CalendarEvent {
  return { id: 'a~b', day: civilDay(2027, 5, 3), title: 'Sow', place: '', about: '', category: '', ...more };
}

interface Read {
  readonly uid: string;
  readonly from: string;
  readonly to: string;
  readonly title: string;
  readonly place: string;
  readonly about: string;
}

/** What another program makes of the file. */
function read(text: string): readonly Read[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((one) => {
    const { uid, startDate, endDate, summary, location, description } = new ICAL.Event(one);
    return {
      uid,
      from: startDate.toString(),
      to: endDate.toString(),
      title: summary,
      place: location ?? '',
      about: description ?? '',
    };
  });
}

const octets = (text: string): number => new TextEncoder().encode(text).length;

describe('a calendar file', () => {
  it('is read by another program as it was meant', () => {
    const text = writeCalendar([event({ place: 'Barn 1', about: '320 pieces\n0.5 h' })], HEAD);
    expect(read(text)).toEqual([
      {
        uid: 'a~b@dibble',
        from: '2027-05-03',
        to: '2027-05-04',
        title: 'Sow',
        place: 'Barn 1',
        about: '320 pieces\n0.5 h',
      },
    ]);
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('name')).toBe('Season 2027');
    expect(calendar.getFirstSubcomponent('vevent')?.getFirstPropertyValue('dtstamp')?.toString()).toBe(
      '2027-01-12T00:00:00Z',
    );
  });

  it('has the parts that RFC 5545 asks of a calendar and of an event', () => {
    const lines = writeCalendar([event()], HEAD).split('\r\n');
    expect(lines.at(-1)).toBe('');
    for (const wanted of [/^BEGIN:VCALENDAR$/, /^PRODID:/, /^VERSION:2\.0$/, /^UID:/, /^DTSTAMP:\d{8}T\d{6}Z$/]) {
      expect(lines.filter((line) => wanted.test(line)).length).toBe(1);
    }
  });

  it('keeps any text whole, in lines of at most 75 octets that end in a carriage return and a line feed', () => {
    const texts = fc.string({ unit: 'grapheme', maxLength: 300 }).map((text) => text.replace(/[\p{Cc}]/gu, ' '));
    fc.assert(
      fc.property(texts, texts, fc.integer({ min: 0, max: 40_000 }), (title, about, day) => {
        const text = writeCalendar([event({ title, about, day })], HEAD);
        const lines = text.split('\r\n');
        for (const line of lines) {
          expect(octets(line)).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/[\r\n]/);
        }
        const [one] = read(text);
        expect(one?.title).toBe(title);
        expect(one?.about).toBe(about);
        expect(one?.from).toBe(isoDate(day));
      }),
      { numRuns: 300 },
    );
  });

  it('leaves out marks that have no place in a text', () => {
    const [one] = read(writeCalendar([event({ title: 'So\u0000w\u0007 it\r\nnow' })], HEAD));
    expect(one?.title).toBe('Sow it\nnow');
  });
});
