// The operations that leave sheets, rows and cells as they are: how sheets are looked at, settings, branches that are kept, and
// scratch papers. Each is done to the document and gives its inverse. Called by changes.ts; but for today's date, nothing is
// worked out again.

import { withRule, withView } from '../schema/looks.ts';
import { entry } from '../schema/records.ts';
import type { Writings } from '../values/writing.ts';
import type { Document } from './document.ts';
import type { Touched } from './touched.ts';
import type { Operation, OperationOf } from './transaction.ts';

type LookOperation = OperationOf<'view' | 'colour'>;
export type SettingOperation =
  | LookOperation
  | OperationOf<'title' | 'today' | 'locale' | 'branch' | 'paper' | 'paper cell'>;

export function applySetting(
  document: Document,
  operation: SettingOperation,
  writings: Writings,
  touched: Touched,
): readonly Operation[] {
  switch (operation.op) {
    case 'view':
    case 'colour':
      touched.looksOf.add(operation.sheet);
      return look(document, operation);
    case 'title': {
      const before = document.title;
      document.title = operation.title;
      touched.settings = true;
      return [{ op: 'title', title: before }];
    }
    case 'today': {
      const { store: frame } = document;
      const before = frame.today;
      frame.today = operation.today;
      document.run.todayChanged();
      touched.settings = true;
      return [{ op: 'today', today: before }];
    }
    case 'locale': {
      const before = document.locale ?? null;
      document.locale = operation.locale ?? undefined;
      document.writing = writings(document.locale);
      for (const { id } of document.program.sheets) touched.columnsOf.add(id);
      touched.settings = true;
      return [{ op: 'locale', locale: before }];
    }
    case 'branch': {
      const { branch, holds } = operation;
      const before = document.branches.get(branch) ?? null;
      if (before === holds) return [];
      document.keepBranch(branch, holds);
      touched.settings = true;
      return [{ op: 'branch', branch, holds: before }];
    }
    case 'paper': {
      const { paper, name } = operation;
      const before = document.papers.paper(paper)?.name ?? null;
      if (before === name) return [];
      document.papers.name(paper, name);
      touched.papers.add(paper);
      return [{ op: 'paper', paper, name: before }];
    }
    case 'paper cell': {
      const { paper, cell, entry: typed } = operation;
      const before = document.papers.entry(paper, cell);
      if (before === typed) return [];
      document.papers.put(paper, cell, typed);
      touched.papers.add(paper);
      return [{ op: 'paper cell', paper, cell, entry: before }];
    }
  }
}

function look(document: Document, operation: LookOperation): readonly Operation[] {
  const { sheet } = operation;
  const before = entry(document.looks, sheet);
  switch (operation.op) {
    case 'view': {
      const { view, declaration } = operation;
      const was = entry(before?.views, view);
      document.looks = withView(document.looks, sheet, view, declaration);
      return [{ op: 'view', sheet, view, ...(was === undefined ? {} : { declaration: was }) }];
    }
    case 'colour': {
      const { rule, declaration } = operation;
      const was = entry(before?.rules, rule);
      document.looks = withRule(document.looks, sheet, rule, declaration);
      return [{ op: 'colour', sheet, rule, ...(was === undefined ? {} : { declaration: was }) }];
    }
  }
}
