// Tables as they stand on paper: the farm's name and the title repeat at the head of every page, rows are not broken.

import { usePrinting } from '../drawing/printing.ts';
import './paper.css';
import type { Paper, PaperCell, PaperColumn, PaperMark, PaperTable } from './paper.ts';

/** So many rows of a table stand on the screen; paper has all of them. */
const ON_SCREEN = 300;

interface PaperTablesProps {
  readonly paper: Paper;
  /** All rows stand there at once, as for paper. */
  readonly isWhole?: boolean;
}

export function PaperTables({ paper, isWhole = false }: PaperTablesProps) {
  const printing = usePrinting() || isWhole;
  const { title, farm, says, tables, marks = [], wide = false } = paper;
  return (
    <article class={wide ? 'paper paper-wide' : 'paper'} aria-label={title}>
      <h2>{title}</h2>
      <p class="paper-farm">{farm}</p>
      {says === '' ? null : <p class="paper-says">{says}</p>}
      {marks.length === 0 ? null : <Marks marks={marks} />}
      {together(tables).map((within, index) => (
        <OneTable
          key={`${within[0]?.heading} ${index}`}
          tables={within}
          running={`${farm}: ${title}`}
          isWhole={printing}
        />
      ))}
    </article>
  );
}

function Marks({ marks }: { readonly marks: readonly PaperMark[] }) {
  return (
    <p class="paper-says">
      {marks.map(({ mark, says }) => (
        <span key={`${mark} ${says}`} class="paper-meaning">
          <Mark mark={mark} /> {says}
        </span>
      ))}
    </p>
  );
}

function Mark({ mark }: { readonly mark: string }) {
  return <b class="paper-mark">{mark}</b>;
}

/** Tables that follow one another with the very same columns, set as one. */
function together(tables: readonly PaperTable[]): readonly (readonly PaperTable[])[] {
  const sets: PaperTable[][] = [];
  for (const table of tables) {
    const last = sets.at(-1);
    if (last?.[0]?.columns === table.columns && last[0].boxes === table.boxes) last.push(table);
    else sets.push([table]);
  }
  return sets;
}

interface OneTableProps {
  readonly tables: readonly PaperTable[];
  readonly running: string;
  readonly isWhole: boolean;
}

function OneTable({ tables, running, isWhole }: OneTableProps) {
  const [first] = tables;
  if (first === undefined) return null;
  const { columns, boxes, above } = first;
  const wide = columns.length + (boxes ? 1 : 0);
  const isGrouped = tables.length > 1 || above !== undefined;
  const caption = (isGrouped ? above : first.heading) ?? '';
  const shown = isWhole ? tables : firstRows(tables);
  const left = rowsIn(tables) - rowsIn(shown);
  return (
    <>
      <table aria-label={caption === '' ? running : undefined}>
        {caption === '' ? null : <caption>{caption}</caption>}
        <thead>
          <tr class="paper-running">
            <td colSpan={wide}>{running}</td>
          </tr>
          <tr>
            {boxes ? (
              <th scope="col">
                <span class="spoken">Done</span>
              </th>
            ) : null}
            {columns.map(({ name, figure, width }) => (
              <th
                key={name}
                scope="col"
                class={figure ? 'figure' : undefined}
                style={width === undefined ? undefined : { width }}
              >
                {name}
              </th>
            ))}
          </tr>
        </thead>
        {shown.map((table, index) => (
          <tbody key={index}>
            {isGrouped ? (
              <tr class="paper-group">
                <th scope="rowgroup" colSpan={wide}>
                  {table.heading}
                </th>
              </tr>
            ) : null}
            <Rows table={table} />
            {table.totals === undefined ? null : <Totals totals={table.totals} columns={columns} boxes={boxes} />}
          </tbody>
        ))}
      </table>
      {left === 0 ? null : <p class="no-paper">{`And ${left} more rows, which are printed.`}</p>}
    </>
  );
}

function rowsIn(tables: readonly PaperTable[]): number {
  return tables.reduce((sum, { rows }) => sum + rows.length, 0);
}

/** As many of the first rows as stand on the screen, what stands under a table only under a whole one. */
function firstRows(tables: readonly PaperTable[]): readonly PaperTable[] {
  let room = ON_SCREEN;
  return tables.flatMap((table): readonly PaperTable[] => {
    const all = table.rows.length;
    const rows = table.rows.slice(0, room);
    room -= rows.length;
    if (rows.length === all) return [table];
    const { totals, ...begun } = table;
    return rows.length === 0 ? [] : [{ ...begun, rows }];
  });
}

function Totals({
  totals,
  columns,
  boxes,
}: Pick<PaperTable, 'columns' | 'boxes'> & { readonly totals: readonly string[] }) {
  return (
    <tr class="paper-totals">
      {boxes ? <td /> : null}
      {totals.map((text, at) => (
        <td key={columns[at]?.name} class={columns[at]?.figure === true ? 'figure' : undefined}>
          {text}
        </td>
      ))}
    </tr>
  );
}

function Rows({ table: { columns, rows, boxes } }: { readonly table: PaperTable }) {
  return (
    <>
      {rows.map((row, index) => (
        <tr key={index}>
          {boxes ? (
            <td class="paper-box">
              <span aria-hidden="true" />
            </td>
          ) : null}
          {row.map((cell, at) => (
            <td key={columns[at]?.name} class={classOf(cell, columns[at])}>
              <Cell cell={cell} />
            </td>
          ))}
        </tr>
      ))}
    </>
  );
}

function classOf(cell: PaperCell, column: PaperColumn | undefined): string | undefined {
  if (typeof cell !== 'string' && !('mark' in cell)) return 'paper-ticks';
  return column?.figure === true ? 'figure' : undefined;
}

function Cell({ cell }: { readonly cell: PaperCell }) {
  if (typeof cell === 'string') return <>{cell}</>;
  if ('mark' in cell)
    return (
      <>
        <Mark mark={cell.mark} /> {cell.text}
      </>
    );
  return (
    <>
      {cell.map((words, index) => (
        <span key={`${words} ${index}`} class="paper-tick paper-box">
          <span aria-hidden="true" />
          {words}{' '}
        </span>
      ))}
    </>
  );
}
