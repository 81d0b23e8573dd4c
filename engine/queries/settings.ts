// What a workbook says of itself: its title, units, money, day, and the template it is made from.

import type { UnitSystem } from '../schema/declaration.ts';
import type { Writing } from '../values/writing.ts';
import type { Book } from './book.ts';

export interface Settings {
  readonly title: string;
  readonly units: UnitSystem;
  /** ISO 4217 code. */
  readonly currency: string;
  /** Civil day that TODAY() gives. */
  readonly today: number;
  readonly template: { readonly name: string; readonly version: number };
  /** The locale that the workbook names; undefined: that of the machine. */
  readonly locale: string | undefined;
  /** How figures and days are read and shown; undefined: as formulas have them. */
  readonly writing: Writing | undefined;
}

export function settings({ document }: Book): Settings {
  const { title, program, frame, template, locale, writing } = document;
  const { units, currency } = program;
  return {
    title,
    units,
    currency,
    today: frame.today,
    template: { name: template.name, version: template.version },
    locale,
    writing,
  };
}
