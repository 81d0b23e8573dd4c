// How people of a place write figures and days, as data: the marks in numbers, which comes first in 3/4, the names of months.
// A face makes it from the locale that the browser or the workbook names (the engine has no list of locales); where none is
// given, figures and days are read and shown as formulas have them.

export interface Writing {
  /** The locale it is of, 'de-CH': names are put in its order. */
  readonly locale: string;
  /** Between whole and broken part: '12.5' or '12,5'. */
  readonly decimal: '.' | ',';
  /** Between thousands: ',', '.', ' ' in its kinds, an apostrophe; '' for none. */
  readonly group: string;
  /** 3/4 is the third of April. */
  readonly dayFirst: boolean;
  /** The mark of days written in figures with their year in front, '-' for 2027-04-03; '' where the year is behind. */
  readonly yearFirst: string;
  /** What each month from January is called, in every form it has in a date and by itself. */
  readonly months: readonly (readonly string[])[];
  /** As dates show them: 'Mar', 'mars', 'März'. */
  readonly shortMonths: readonly string[];
  /** Short, as a month that stands without a day is called: '3月', 'maalis'. */
  readonly monthsAlone: readonly string[];
  /** How a date is shown: '{d} {m} {y}', '{d}. {m} {y}'. */
  readonly date: string;
  /** Names of the days from Monday, in full. */
  readonly weekdays: readonly string[];
  /** What a week is called in front of its number, besides in English: 'v.', 'semaine'. */
  readonly weeks: readonly string[];
}

/** The writing of a locale, 'de-CH'; of the machine where none is named. */
export type Writings = (locale: string | undefined) => Writing | undefined;

/** As formulas have them, whatever the locale: for tests, the terminal and whoever knows no place. */
export const plainWriting: Writings = () => undefined;
