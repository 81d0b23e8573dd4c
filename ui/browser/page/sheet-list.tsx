// The season as the questions in the order they come up, each with its sheets: how many rows a sheet has and how many
// things in it need attention.

import type { Attention, TableView } from '../../../engine/index.ts';
import { attention, goTo, tableOnScreen, workbook } from '../state.ts';

interface Question {
  readonly question: string;
  readonly tables: readonly TableView[];
}

export function SheetList() {
  const book = workbook();
  const here = tableOnScreen.value;
  const counts = countByTable(attention.value);
  return (
    <nav class="sheet-list" aria-label="Sheets">
      {questionsOf(book.tables()).map(({ question, tables }) => (
        <section key={question}>
          <h2>{question}</h2>
          <ul>
            {tables.map((table) => (
              <li key={table.name}>
                <button
                  type="button"
                  aria-current={table.name === here ? 'page' : undefined}
                  onClick={() => goTo(table.name)}
                >
                  <span class="sheet-name">{table.name}</span>
                  <Found count={counts.get(table.name)} />
                  <span class="row-count">{table.oneRow ? '' : book.rows(table.name).length}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </nav>
  );
}

/** Sheets under their questions, each question where its first sheet stands. */
function questionsOf(tables: readonly TableView[]): readonly Question[] {
  const questions = new Map<string, TableView[]>();
  for (const table of tables) questions.set(table.question, [...(questions.get(table.question) ?? []), table]);
  return [...questions].map(([question, within]) => ({ question, tables: within }));
}

interface Count {
  readonly level: Attention['level'];
  readonly count: number;
}

/** Errors and warnings by sheet; notes ask for nothing. */
function countByTable(list: readonly Attention[]): ReadonlyMap<string, Count> {
  const counts = new Map<string, Count>();
  for (const { table, level } of list) {
    if (level === 'note') continue;
    const before = counts.get(table);
    counts.set(table, { level: before?.level ?? level, count: (before?.count ?? 0) + 1 });
  }
  return counts;
}

function Found({ count }: { readonly count: Count | undefined }) {
  if (count === undefined) return null;
  const words = `${count.count} ${count.count === 1 ? 'thing' : 'things'} to look at`;
  return (
    <span class={`attention-mark level-${count.level}`} title={words}>
      <span aria-hidden="true">{count.count}</span>
      <span class="spoken">, {words},</span>
    </span>
  );
}
