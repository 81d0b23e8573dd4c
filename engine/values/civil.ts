// Civil days: a date is a whole number of days since 1970-01-01 in the proleptic Gregorian calendar. No clock and no
// time zone enters. Anything may call this file; it calls nothing.

export interface YearMonthDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/**
 * The civil day of a year, month (1 to 12, others roll into neighbouring years) and day (others roll likewise).
 * Source: H. Hinnant, "chrono-compatible low-level date algorithms", days_from_civil.
 */
export function civilDay(year: number, month: number, day: number): number {
  const months = year * 12 + (month - 1);
  const rolledYear = Math.floor(months / 12);
  const rolledMonth = months - rolledYear * 12 + 1;
  const shifted = rolledMonth <= 2 ? rolledYear - 1 : rolledYear;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYearFromMarch = Math.floor((153 * (rolledMonth + (rolledMonth > 2 ? -3 : 9)) + 2) / 5);
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYearFromMarch;
  return era * 146097 + dayOfEra - 719468 + (day - 1);
}

/** Year, month and day of a civil day. Source: as civilDay, civil_from_days. */
export function yearMonthDay(civil: number): YearMonthDay {
  const shifted = Math.floor(civil) + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYearFromMarch = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYearFromMarch + 2) / 153);
  const day = dayOfYearFromMarch - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/** 1 on the first of January, up to 365 or 366. */
export function dayOfYear(civil: number): number {
  return Math.floor(civil) - civilDay(yearMonthDay(civil).year, 1, 1) + 1;
}

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** 28 to 31; months beyond 12 or below 1 roll into neighbouring years. */
export function daysInMonth(year: number, month: number): number {
  return civilDay(year, month + 1, 1) - civilDay(year, month, 1);
}

/** ISO 8601 date text, 2027-03-15. */
export function isoDate(civil: number): string {
  const { year, month, day } = yearMonthDay(civil);
  const pad = (n: number, width: number): string => String(n).padStart(width, '0');
  return `${year < 0 ? '-' : ''}${pad(Math.abs(year), 4)}-${pad(month, 2)}-${pad(day, 2)}`;
}

/** The civil day of an ISO 8601 date text; undefined where the text is not one or the day does not exist. */
export function civilDayOfIso(text: string): number | undefined {
  const match = /^(-?\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const civil = civilDay(Number(match[1]), Number(match[2]), Number(match[3]));
  return isoDate(civil) === text ? civil : undefined;
}
