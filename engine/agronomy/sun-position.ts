// Where the sun stands: its declination and the equation of time by the NOAA/Meeus low-accuracy formulas. Called by
// day length; calls nothing. One position costs about ten sines and cosines, nothing is allocated.

const RADIANS = Math.PI / 180;

/** Julian date at the start (0 h universal time) of civil day 0, 1970-01-01. */
const JULIAN_DATE_OF_CIVIL_ZERO = 2440587.5;

// The last position worked out: two numbers that a caller reads at once, kept here so that no object is made.
let declination = 0;
let equationOfTime = 0;

/**
 * Works out the sun's place at `moment`, civil days with a fraction, universal time; read it with `sunDeclination` and
 * `sunEquationOfTime` before the next call. Source: J. Meeus 1991, Astronomical Algorithms, chapters 24 and 27, in the
 * form of the NOAA solar calculator.
 */
export function placeSun(moment: number): void {
  const t = (moment + JULIAN_DATE_OF_CIVIL_ZERO - 2451545) / 36525;
  const meanLongitude = (280.46646 + t * (36000.76983 + 0.0003032 * t)) * RADIANS;
  const meanAnomaly = (357.52911 + t * (35999.05029 - 0.0001537 * t)) * RADIANS;
  const eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
  const sinAnomaly = Math.sin(meanAnomaly);
  const cosAnomaly = Math.cos(meanAnomaly);
  const sinTwice = 2 * sinAnomaly * cosAnomaly;
  const sinThrice = sinAnomaly * (3 - 4 * sinAnomaly * sinAnomaly);
  const centre =
    (sinAnomaly * (1.914602 - t * (0.004817 + 0.000014 * t)) +
      sinTwice * (0.019993 - 0.000101 * t) +
      0.000289 * sinThrice) *
    RADIANS;
  const node = (125.04 - 1934.136 * t) * RADIANS;
  const apparentLongitude = meanLongitude + centre - (0.00569 + 0.00478 * Math.sin(node)) * RADIANS;
  const obliquity =
    (23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60 + 0.00256 * Math.cos(node)) * RADIANS;
  const cosObliquity = Math.cos(obliquity);
  declination = Math.asin(Math.sin(obliquity) * Math.sin(apparentLongitude));

  const y = (1 - cosObliquity) / (1 + cosObliquity);
  const sinLongitude = Math.sin(meanLongitude);
  const cosLongitude = Math.cos(meanLongitude);
  const sin2L = 2 * sinLongitude * cosLongitude;
  const cos2L = 1 - 2 * sinLongitude * sinLongitude;
  equationOfTime =
    (4 / RADIANS) *
    (y * sin2L -
      2 * eccentricity * sinAnomaly +
      4 * eccentricity * y * sinAnomaly * cos2L -
      y * y * sin2L * cos2L -
      1.25 * eccentricity * eccentricity * sinTwice);
}

/** Radians north of the equator, at the last place worked out. */
export function sunDeclination(): number {
  return declination;
}

/** Minutes by which a sundial runs ahead of the clock, at the last place worked out. */
export function sunEquationOfTime(): number {
  return equationOfTime;
}
