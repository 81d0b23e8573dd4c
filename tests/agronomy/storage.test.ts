// Storage at the edges, a store run by hand, every verdict with its sentence.
import { describe, expect, it } from 'vitest';
import {
  keepsUntil,
  massAfter,
  massToStore,
  monthlyLossOf,
  type Optimum,
  storeRun,
  storeSentence,
  storeVerdict,
  storeVolume,
} from '../../engine/agronomy/storage.ts';

const NONE = Number.NaN;

describe('loss in store', () => {
  it.each([
    ['nothing stored', 0, 0.1, 3, 0],
    ['no time', 100, 0.1, 0, 100],
    ['no loss', 100, 0, 6, 100],
    ['all lost in a month', 100, 1, 1, 0],
    ['a quarter lost in each of two months', 64, 0.25, 2, 36],
    ['less than nothing stored', -100, 0.1, 3, NONE],
    ['a loss above all', 100, 1.1, 2, NONE],
    ['a time below nothing', 100, 0.1, -1, NONE],
  ])('%s', (_, start, loss, months, left) => {
    expect(massAfter(start, loss, months)).toBe(left);
  });

  it('to have nothing takes nothing, to have less has no answer', () => {
    expect(massToStore(0, 0.1, 3)).toBe(0);
    expect(massToStore(36, 0.25, 2)).toBe(64);
    expect(massToStore(-1, 0.1, 3)).toBeNaN();
  });

  it.each([
    ['none', 0, 6, 0],
    ['all', 1, 6, 1],
    ['three quarters in two months', 0.75, 2, 0.5],
    ['more than all', 1.1, 1, NONE],
    ['less than none', -0.1, 1, NONE],
  ])('a month of a whole loss of %s', (_, whole, months, monthly) => {
    expect(monthlyLossOf(whole, months)).toBe(monthly);
  });

  it('a store period by period: what is asked for goes out as far as it reaches', () => {
    expect(storeRun([100, 0, 20], [30, 200], 0)).toEqual([
      { lost: 0, sold: 30, short: 0, left: 70 },
      { lost: 0, sold: 70, short: 130, left: 0 },
      { lost: 0, sold: 0, short: 0, left: 20 },
    ]);
    expect(storeRun([], [5], 0)).toEqual([{ lost: 0, sold: 0, short: 5, left: 0 }]);
    expect(storeRun([], [], 0.1)).toEqual([]);
  });

  it.each([
    ['nothing', 0, 500, 0.5, 0],
    ['a room filled wholly', 1000, 500, 1, 2],
    ['a room filled beyond its size', 1000, 500, 1.01, NONE],
    ['less than nothing', -1000, 500, 0.5, NONE],
    ['no density', 1000, 0, 0.5, NONE],
    ['both below nothing', -1000, -500, 0.5, NONE],
  ])('room for %s', (_, mass, density, share, volume) => {
    expect(storeVolume(mass, density, share)).toBe(volume);
  });
});

describe('a store against the crop', () => {
  const crop: Optimum = { temperature: [4, 6], humidity: [0.5, 0.75], freezing: -1 };

  it.each([
    ['at its freezing point', -1, 'freezes'],
    ['just above it', -0.9, 'too cold'],
    ['a little more than a degree below', 2.9, 'too cold'],
    ['a degree below', 3, 'right'],
    ['a degree above', 7, 'right'],
    ['a little more than a degree above', 7.1, 'too warm'],
  ])('%s', (_, temperature, verdict) => {
    expect(storeVerdict(temperature, 0.6, crop)?.temperature).toBe(verdict);
  });

  it.each([
    ['five points dry', 0.45, 'right'],
    ['more than five points dry', 0.44, 'too dry'],
    ['five points damp', 0.8, 'right'],
    ['more than five points damp', 0.81, 'too damp'],
  ])('%s', (_, humidity, verdict) => {
    expect(storeVerdict(5, humidity, crop)?.humidity).toBe(verdict);
  });

  it('does not freeze a crop whose freezing point is not known', () => {
    expect(storeVerdict(-20, 0.6, { temperature: [4, 6], humidity: [0.5, 0.75] })?.temperature).toBe('too cold');
    expect(storeVerdict(5, NONE, crop)).toBeUndefined();
  });

  it('says each verdict in words', () => {
    expect(storeSentence({ temperature: 'right', humidity: 'right' })).toBe(
      'The store is at the temperature this crop keeps best at; the humidity is right.',
    );
    expect(storeSentence({ temperature: 'too cold', humidity: 'too dry' })).toBe(
      'The store is colder than this crop keeps best at: watch for chilling damage; the air is drier than it should be: it will lose weight and shrivel.',
    );
    expect(storeSentence({ temperature: 'freezes', humidity: 'right' })).toBe(
      'The store is at or below the freezing point of this crop: it will be spoilt; the humidity is right.',
    );
  });

  it('has no last day for a lot that keeps less than no time', () => {
    const lot = { name: 'sweet', storedOn: 100, mass: 5 };
    expect(keepsUntil({ ...lot, keepsDays: 0 })).toBe(100);
    expect(keepsUntil({ ...lot, keepsDays: -1 })).toBeNaN();
  });
});
