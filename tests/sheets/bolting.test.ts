// What the season workbook says of bolting, beside the papers that its figures were taken from: a winter of one temperature from a
// date until another, for crops that are large enough. That the figures come through; how well they tell, no trial here says.

import { describe, expect, it } from 'vitest';
import { isoDate } from '../../engine/index.ts';
import { civilDay } from '../../engine/values/civil.ts';
import { type Season, seasonOf } from './season.ts';

const FROM = civilDay(2027, 2, 1);
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** A planting that has been large enough since 1 February and is cut after so many days, at one temperature (C) all year. */
function coldSeason(crop: string, temperature: number): Season {
  const season = seasonOf(
    {
      'Monthly climate': MONTHS.map((Month, index) => ({
        Month,
        // A tenth of a degree of summer, so that the year has a middle.
        Low: `${temperature + (index === 6 ? 0.1 : 0)} degC`,
        High: `${temperature + (index === 6 ? 0.1 : 0)} degC`,
      })),
      Varieties: [{ Variety: 'One', Crop: crop }],
      Plantings: [{ Planting: 'One', Variety: 'One', Start: 'direct seed', Sown: '2027-01-02' }],
    },
    { Latitude: '52' },
  );
  season.type('Plantings', 'One', 'Feels cold from', isoDate(FROM));
  return season;
}

function riskAfter(season: Season, days: number): unknown {
  season.type('Plantings', 'One', 'Bolts until', isoDate(FROM + days));
  return season.value('Plantings', 'One', 'Bolting risk');
}

/** Days until the workbook says this of the risk; not a number within two hundred. */
function daysUntil(crop: string, temperature: number, risk: string): number {
  const season = coldSeason(crop, temperature);
  for (let days = 1; days <= 200; days += 1) if (riskAfter(season, days) === risk) return days;
  return Number.NaN;
}

describe('bolting as the workbook says it', () => {
  it('carrot: 126 degree-days above -1 C for any, 336 for nine in ten; fastest at 6.5 C, none at 16 (Atherton, Craigon & Basher 1990, J. Hort. Sci. 65: 423-429)', () => {
    const daily = 6.5 - -1;
    expect(Math.abs(daysUntil('Carrot', 6.5, 'raised') * daily - 126)).toBeLessThanOrEqual(daily);
    expect(Math.abs(daysUntil('Carrot', 6.5, 'high') * daily - 336)).toBeLessThanOrEqual(daily);
    expect(Math.abs(daysUntil('Carrot', 2, 'raised') * 3 - 126)).toBeLessThanOrEqual(3);
    expect(riskAfter(coldSeason('Carrot', 16), 190)).toBe('low');
  });

  it('celery: nine weeks at 5 C send it to seed, and none at 18 (Ramin & Atherton 1991, Manipulation of bolting and flowering in celery II)', () => {
    expect(Math.abs(daysUntil('Celery', 5, 'high') - 63)).toBeLessThanOrEqual(1);
    expect(riskAfter(coldSeason('Celery', 18), 190)).toBe('low');
  });

  it('leek: 42 days at 7 C; none at 18 (Wurr et al. 1999 and Wiebe 1994, in Brewster 2008)', () => {
    expect(Math.abs(daysUntil('Leek', 7, 'high') - 42)).toBeLessThanOrEqual(1);
    expect(riskAfter(coldSeason('Leek', 18), 190)).toBe('low');
  });

  it('beet: 41 days between 0 and 13 C bolted 5 to 7 % of resistant kinds in 2008 (Milford, Jarvis & Walters 2010, J. Agric. Sci. 148)', () => {
    expect(Math.abs(daysUntil('Beet', 8, 'raised') - 41)).toBeLessThanOrEqual(2);
    expect(riskAfter(coldSeason('Beet', 14), 190)).toBe('low');
  });

  it('counts one day of cold as one', () => {
    const season = coldSeason('Leek', 7);
    riskAfter(season, 1);
    expect(season.value('Plantings', 'One', 'Cold says')).toMatch(/^1 day of full cold/);
    riskAfter(season, 2);
    expect(season.value('Plantings', 'One', 'Cold says')).toMatch(/^2 days of full cold/);
  });

  it('says nothing of a crop of which it is not known how much cold it stands', () => {
    const season = coldSeason('Radicchio', 8);
    expect(season.value('Crops', 'Radicchio', 'Bolting trigger')).toBe('cold and long days');
    expect(season.value('Crops', 'Radicchio', 'Bolting cold days')).toBeNull();
    expect(riskAfter(season, 150)).toBeNull();
  });

  it('celery is young for 731 degree-days above 3 C (Ramin & Atherton 1991)', () => {
    const season = seasonOf(
      {
        'Monthly climate': MONTHS.map((Month, index) => ({
          Month,
          Low: `${15 + (index === 6 ? 0.1 : 0)} degC`,
          High: `${15 + (index === 6 ? 0.1 : 0)} degC`,
        })),
        Varieties: [{ Variety: 'One', Crop: 'Celery' }],
        Plantings: [{ Planting: 'One', Variety: 'One', Start: 'direct seed', Sown: '2027-01-02' }],
      },
      { Latitude: '52' },
    );
    const [up, large] = ['Up', 'Feels cold from'].map((column) => Number(season.value('Plantings', 'One', column)));
    expect(Math.abs(((large ?? Number.NaN) - (up ?? Number.NaN)) * 12 - 731)).toBeLessThanOrEqual(13);
  });
});
