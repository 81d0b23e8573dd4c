// What a person changed of how sheets are looked at: views of their own, views of the sheets changed or put away, colours.
// Plain data by id, kept in the workbook file beside the schema but apart from it: nothing has to be worked out again when
// it changes.

import { type ById, entry, withEntry, withField } from './records.ts';
import type { ColourRule, ViewDeclaration } from './views.ts';

export interface SheetLooks {
  /** Own views and changed ones of the sheet; null for one of the sheet's that was put away. */
  readonly views?: ById<ViewDeclaration | null>;
  readonly rules?: ById<ColourRule>;
}

/** By sheet id. */
export type Looks = ById<SheetLooks>;

export const NO_LOOKS: Looks = {};

/** With one view changed; undefined gives the sheet's own back, or takes an own one out. */
export function withView(looks: Looks, sheet: string, id: string, view: ViewDeclaration | null | undefined): Looks {
  return withSheet(looks, sheet, (before) =>
    withField(before, 'views', unlessEmpty(withEntry(before.views, id, view))),
  );
}

export function withRule(looks: Looks, sheet: string, id: string, rule: ColourRule | undefined): Looks {
  return withSheet(looks, sheet, (before) =>
    withField(before, 'rules', unlessEmpty(withEntry(before.rules, id, rule))),
  );
}

function withSheet(looks: Looks, sheet: string, change: (before: SheetLooks) => SheetLooks): Looks {
  return withEntry(looks, sheet, unlessEmpty(change(entry(looks, sheet) ?? {})));
}

function unlessEmpty<T extends object>(record: T): T | undefined {
  return Object.keys(record).length === 0 ? undefined : record;
}

/** The view that every sheet has: all of its columns. */
export const ALL_COLUMNS: ViewDeclaration = { id: 'all', name: 'Everything' };

/** The views of a sheet as they stand: the sheet's, then a person's own, then all columns. */
export function standingViews(
  declared: readonly ViewDeclaration[],
  looks: SheetLooks | undefined,
): readonly ViewDeclaration[] {
  const views = looks?.views;
  const shipped = declared.flatMap((view): ViewDeclaration[] => {
    const changed = entry(views, view.id);
    return changed === null ? [] : [changed ?? view];
  });
  const isShipped = (id: string): boolean => id === ALL_COLUMNS.id || declared.some((view) => view.id === id);
  const own = Object.values(views ?? {})
    .filter((view) => view !== null)
    .filter(({ id }) => !isShipped(id));
  return [...shipped, ...own.sort(byOrder), entry(views, ALL_COLUMNS.id) ?? ALL_COLUMNS];
}

/** Rules as they count: the first that holds colours a cell. */
export function standingRules(looks: SheetLooks | undefined): readonly ColourRule[] {
  return Object.values(looks?.rules ?? {}).sort(byOrder);
}

function byOrder(
  a: { readonly id: string; readonly order?: number },
  b: { readonly id: string; readonly order?: number },
): number {
  return (a.order ?? 0) - (b.order ?? 0) || (a.id < b.id ? -1 : 1);
}
