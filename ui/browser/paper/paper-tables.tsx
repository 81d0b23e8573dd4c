// Tables as they stand on paper: the farm's name and the title repeat at the head of every page, rows are not broken.

import './paper.css';
import type { Paper, PaperTable } from './paper.ts';

export function PaperTables({ paper }: { readonly paper: Paper }) {
  const { title, farm, says, tables } = paper;
  return (
    <article class="paper" aria-label={title}>
      <h2>{title}</h2>
      <p class="paper-farm">{farm}</p>
      {says === '' ? null : <p class="paper-says">{says}</p>}
      {tables.map((table, index) => (
        <OneTable key={`${table.heading} ${index}`} table={table} running={`${farm}: ${title}`} />
      ))}
    </article>
  );
}

function OneTable({
  table: { heading, columns, rows, boxes },
  running,
}: {
  readonly table: PaperTable;
  readonly running: string;
}) {
  const wide = columns.length + (boxes ? 1 : 0);
  return (
    <table>
      <caption>{heading}</caption>
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
          {columns.map(({ name, figure }) => (
            <th key={name} scope="col" class={figure ? 'figure' : undefined}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          <tr key={index}>
            {boxes ? (
              <td class="paper-box">
                <span aria-hidden="true" />
              </td>
            ) : null}
            {row.map((text, at) => (
              <td key={columns[at]?.name} class={columns[at]?.figure === true ? 'figure' : undefined}>
                {text}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
