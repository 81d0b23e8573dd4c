// The sun's place against a planetary theory: declination and equation of time over the years the formulas are meant for.

import {
  AstroTime,
  Body,
  EquatorFromVector,
  GeoVector,
  RotateVector,
  Rotation_EQJ_EQD,
  SiderealTime,
} from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { placeSun, sunDeclination, sunEquationOfTime } from '../../engine/agronomy/sun-position.ts';
import { civilDay } from '../../engine/values/civil.ts';

const J2000 = 2451545 - 2440587.5;

/** Geocentric apparent declination (degrees) and equation of time (minutes), by astronomy-engine. */
function sunByPlanetaryTheory(moment: number): { readonly declination: number; readonly equation: number } {
  const time = AstroTime.FromTerrestrialTime(moment - J2000);
  const { ra, dec } = EquatorFromVector(RotateVector(Rotation_EQJ_EQD(time), GeoVector(Body.Sun, time, true)));
  const clock = (moment - Math.floor(moment)) * 24;
  const sundial = SiderealTime(new AstroTime(moment - J2000)) - ra + 12;
  return { declination: dec, equation: (((sundial - clock + 36) % 24) - 12) * 60 };
}

interface Misses {
  declination: number;
  equation: number;
  meanDeclination: number;
  meanEquation: number;
}

// The largest and the mean miss over a year, 60 moments at all hours; degrees and seconds of time.
function missesOf(year: number): Misses {
  const misses: Misses = { declination: 0, equation: 0, meanDeclination: 0, meanEquation: 0 };
  for (let i = 0; i < 60; i += 1) {
    const moment = civilDay(year, 1, 1) + i * 6.1;
    const theory = sunByPlanetaryTheory(moment);
    placeSun(moment);
    const declination = (sunDeclination() * 180) / Math.PI - theory.declination;
    const equation = (sunEquationOfTime() - theory.equation) * 60;
    misses.declination = Math.max(misses.declination, Math.abs(declination));
    misses.equation = Math.max(misses.equation, Math.abs(equation));
    misses.meanDeclination += declination / 60;
    misses.meanEquation += equation / 60;
  }
  return misses;
}

describe("the sun's place", () => {
  test.each([1800, 1900, 2000, 2100, 2200])('in %d is that of a planetary theory', (year) => {
    const misses = missesOf(year);
    expect(misses.declination).toBeLessThan(0.003);
    expect(misses.equation).toBeLessThan(4);
    expect(Math.abs(misses.meanDeclination)).toBeLessThan(0.0007);
    expect(Math.abs(misses.meanEquation)).toBeLessThan(1);
  });
});
