// Dated jobs as a calendar file that phones and other programs read: iCalendar, RFC 5545. Each job is a day-long event under an
// identity that never changes, so that importing a newer file moves events rather than doubling them. Text in, text out.

import { yearMonthDay } from '../values/civil.ts';

export interface CalendarEvent {
  /** The same for as long as the job is the same, whatever becomes of its date. */
  readonly id: string;
  /** Civil day. */
  readonly day: number;
  readonly title: string;
  /** '' where it has none. */
  readonly place: string;
  readonly about: string;
  readonly category: string;
}

export interface CalendarHead {
  /** What the calendar is called. */
  readonly name: string;
  /** Civil day on which the file is written: the engine has no clock. */
  readonly written: number;
}

/** RFC 5545, 3.1: no line longer than 75 octets. */
const LONGEST_LINE = 75;

/** The file's text. */
export function writeCalendar(events: readonly CalendarEvent[], { name, written }: CalendarHead): string {
  const stamp = `${dateText(written)}T000000Z`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Dibble//Dibble//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${textValue(name)}`,
    `X-WR-CALNAME:${textValue(name)}`,
    ...events.flatMap((event) => eventLines(event, stamp)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines({ id, day, title, place, about, category }: CalendarEvent, stamp: string): readonly string[] {
  const optional = (property: string, text: string): readonly string[] =>
    text === '' ? [] : [`${property}:${textValue(text)}`];
  return [
    'BEGIN:VEVENT',
    `UID:${textValue(`${id}@dibble`)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${dateText(day)}`,
    `DTEND;VALUE=DATE:${dateText(day + 1)}`,
    `SUMMARY:${textValue(title)}`,
    ...optional('LOCATION', place),
    ...optional('DESCRIPTION', about),
    ...optional('CATEGORIES', category),
    // A day with a job is not a busy day.
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** 20270315 */
function dateText(day: number): string {
  const { year, month, day: date } = yearMonthDay(day);
  return [String(year).padStart(4, '0'), String(month).padStart(2, '0'), String(date).padStart(2, '0')].join('');
}

/** RFC 5545, 3.3.11: backslash, semicolon, comma and line breaks are written with a backslash; other control codes have no place. */
function textValue(text: string): string {
  return Array.from(text.replace(/\r\n?/g, '\n'), (letter) => {
    if (letter === '\n') return '\\n';
    if (letter === '\\' || letter === ';' || letter === ',') return `\\${letter}`;
    const code = letter.codePointAt(0) ?? 0;
    return (code < 32 && letter !== '\t') || code === 127 ? '' : letter;
  }).join('');
}

/** A long line goes on after a line break and a blank, no letter torn apart. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const letter of line) {
    const size = octetsOf(letter);
    if (octets + size > LONGEST_LINE) {
      parts.push(part);
      // The blank that begins the next line counts.
      [part, octets] = ['', 1];
    }
    part += letter;
    octets += size;
  }
  return [...parts, part].join('\r\n ');
}

/** Of a letter in UTF-8. */
function octetsOf(letter: string): number {
  const code = letter.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
