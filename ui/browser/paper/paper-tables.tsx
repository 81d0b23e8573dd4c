// Tables as they stand on paper: the farm's name and the title repeat at the head of every page, rows are not broken.

import './paper.css';
import type { Paper, PaperCell, PaperColumn, PaperTable } from './paper.ts';

export function PaperTables({ paper }: { readonly paper: Paper }) {
  const { title, farm, says, tables } = paper;
  return (
    <article class="paper" aria-label={title}>
      <h2>{title}</h2>
      <p class="paper-farm">{farm}</p>
      {says === '' ? null : <p class="paper-says">{says}</p>}
      {together(tables).map((within, index) => (
        <OneTable key={`${within[0]?.heading} ${index}`} tables={within} running={`${farm}: ${title}`} />
      ))}
    </article>
  );
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

function OneTable({ tables, running }: { readonly tables: readonly PaperTable[]; readonly running: string }) {
  const [first] = tables;
  if (first === undefined) return null;
  const { columns, boxes } = first;
  const wide = columns.length + (boxes ? 1 : 0);
  const isAlone = tables.length === 1;
  return (
    <table aria-label={isAlone ? undefined : running}>
      {isAlone ? <caption>{first.heading}</caption> : null}
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
          {columns.map(({ name, figure, room }) => (
            <th
              key={name}
              scope="col"
              class={figure ? 'figure' : undefined}
              style={room === undefined ? undefined : { width: `${room}%` }}
            >
              {name}
            </th>
          ))}
        </tr>
      </thead>
      {tables.map((table) => (
        <tbody key={table.heading}>
          {isAlone ? null : (
            <tr class="paper-group">
              <th scope="rowgroup" colSpan={wide}>
                {table.heading}
              </th>
            </tr>
          )}
          <Rows table={table} />
        </tbody>
      ))}
    </table>
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
  if (typeof cell !== 'string') return 'paper-ticks';
  return column?.figure === true ? 'figure' : undefined;
}

function Cell({ cell }: { readonly cell: PaperCell }) {
  if (typeof cell === 'string') return <>{cell}</>;
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
