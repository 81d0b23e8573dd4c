// Every case of the OASIS OpenFormula test collection that applies to typed sheets, by section. Those that do not stand in
// openformula.not-applied.ts. The collection is copyright OASIS Open 2006; its notice stands in each file of cases.

import type { Section } from './openformula.case.ts';
import { LANGUAGE } from './openformula.language.ts';
import { NUMBERS } from './openformula.numbers.ts';
import { VALUES } from './openformula.values.ts';

export const SECTIONS: readonly Section[] = [...LANGUAGE, ...VALUES, ...NUMBERS];
