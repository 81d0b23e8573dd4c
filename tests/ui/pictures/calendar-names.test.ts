// Names on the calendar of beds: each planting's can be read, however short the planting and however briefly it stands.

import { describe, expect, test } from 'vitest';
import { ACROSS, UPRIGHT } from '../../../ui/browser/pictures/kit/paper-size.ts';
import { barPlace, layCalendar } from '../../../ui/browser/pictures/season-calendar/calendar-layout.ts';
import { namesOfBars } from '../../../ui/browser/pictures/season-calendar/calendar-names.ts';
import {
  type CalendarBar,
  type SeasonCalendar,
  seasonCalendar,
} from '../../../ui/browser/pictures/season-calendar/season-calendar.ts';
import { demoBook } from '../../browser/workbook-page.ts';

const FIRST = 20_820;

function bar(name: string, at: number, length: number, from: number, days: number): CalendarBar {
  const until = FIRST + from + days;
  const ends = { from: FIRST + from, until, untilEarly: until, untilLate: until };
  const which = { planting: name, name, crop: '', bed: 'b', spreading: false };
  return { ...which, ...ends, harvest: undefined, proposed: false, at, length };
}

/** One bed of so many metres through 365 days. */
function bed(length: number, bars: readonly CalendarBar[]): SeasonCalendar {
  const line = { bed: 'b', name: 'Bed 1', field: '', length, bars, overfull: [], taken: 0 };
  return { season: { first: FIRST, last: FIRST + 364 }, today: FIRST, lines: [line], says: '', writing: undefined };
}

function namesOn(calendar: SeasonCalendar, width: number): readonly string[] {
  const laid = layCalendar(calendar, width);
  return laid.lines.flatMap((place) => namesOfBars(laid, place).map(({ text }) => text));
}

const eight = Array.from({ length: 8 }, (_, index) => bar(`Planting ${index + 1}`, index * 1.8, 1.8, 120, 60));

describe('every name is there in full', () => {
  test('of eight plantings of 1.8 m side by side on 15 m, and of eight of 7.5 m, which are too many', () => {
    const names = eight.map(({ name }) => name);
    expect(namesOn(bed(15, eight), 1150)).toEqual(names);
    const tooMany = eight.map((each, index) => ({ ...each, at: index * 7.5, length: 7.5 }));
    expect(namesOn(bed(15, tooMany), 1150)).toEqual(names);
  });

  test('of the whole demo farm at a desk and on paper', () => {
    const demo = demoBook();
    const calendar = seasonCalendar(demo.workbook, demo.today);
    if (calendar === undefined) throw new Error('The demo farm has no beds.');
    const names = calendar.lines.flatMap(({ bars }) => bars.map(({ name }) => name));
    for (const width of [1150, ACROSS.width, UPRIGHT.width]) expect(namesOn(calendar, width)).toEqual(names);
  });

  test('of one that stands a week: over what is free after it, or before it at the end of the year', () => {
    const brief = [bar('Bunched radish', 0, 5, 100, 7), bar('Winter lettuce', 0, 5, 350, 12)];
    const laid = layCalendar(bed(15, brief), 900);
    const [place] = laid.lines;
    const [radish, lettuce] = place === undefined ? [] : namesOfBars(laid, place);
    expect(radish).toMatchObject({ text: 'Bunched radish', anchor: 'start' });
    expect(lettuce).toMatchObject({ text: 'Winter lettuce', anchor: 'end' });
  });
});

test('a name stands over the line of what is picked, on its bar, also where many stand side by side', () => {
  const picked = eight.map((each) => ({ ...each, harvest: { from: each.from + 10, until: each.until } }));
  const laid = layCalendar(bed(15, picked), 1150);
  for (const place of laid.lines) {
    const names = namesOfBars(laid, place);
    expect(names).toHaveLength(8);
    for (const { bar: named, y } of names) {
      const at = barPlace(laid, place, named);
      expect(y).toBeLessThanOrEqual(at.y + at.height - 3 - 1.5);
      // Capitals of 13 px are some 9.5 px high.
      expect(y - 9.5).toBeGreaterThanOrEqual(at.y);
    }
  }
});

test('a name reaches into no other planting', () => {
  const close = [
    bar('Bunched radish', 0, 5, 100, 10),
    bar('Salad turnips', 0, 5, 112, 60),
    bar('Overwintered peas', 0, 5, 0, 98),
  ];
  expect(namesOn(bed(15, close), 900)[0]).not.toBe('Bunched radish');
  // On another stretch of the bed it is in nobody's way.
  const apart = close.map((each, index) => ({ ...each, at: index * 5 }));
  expect(namesOn(bed(15, apart), 900)[0]).toBe('Bunched radish');
});

test('a line is to scale where names have room so, and else longest where the short plantings stand, none over another', () => {
  const half = layCalendar(bed(15, [bar('A', 0, 7.5, 50, 50), bar('B', 7.5, 7.5, 50, 50)]), 900);
  const heights = half.lines.flatMap((place) => place.line.bars.map((each) => barPlace(half, place, each).height));
  expect(heights[0]).toBeCloseTo(heights[1] ?? 0, 6);
  const laid = layCalendar(bed(15, [...eight.slice(0, 3), bar('Wide', 5.4, 9.6, 120, 60)]), 900);
  const places = laid.lines.flatMap((place) => place.line.bars.map((each) => barPlace(laid, place, each)));
  expect(Math.min(...places.map(({ height }) => height))).toBeGreaterThanOrEqual(13);
  expect(places.every(({ y }, at) => at === 0 || y >= (places[at - 1]?.y ?? 0) + (places[at - 1]?.height ?? 0))).toBe(
    true,
  );
  const foot = (laid.lines[0]?.top ?? 0) + (laid.lines[0]?.height ?? 0);
  expect((places[3]?.y ?? 0) + (places[3]?.height ?? 0)).toBeLessThanOrEqual(foot);
  expect(places[3]?.height).toBeGreaterThan(places[0]?.height ?? 0);
});

test('a hundred plantings side by side make no line that is taller than a page', () => {
  const hundred = Array.from({ length: 100 }, (_, index) => bar(`P${index}`, index, 1, 10, 30));
  expect(layCalendar(bed(100, hundred), 900).height).toBeLessThanOrEqual(ACROSS.tall);
});
