// The workbook on a phone: cards instead of the grid. The page mounts it from 700 px down.

import { workbook } from '../state.ts';

/** The sheets by name. */
export function PhoneView() {
  return (
    <ul>
      {workbook()
        .tables()
        .map((table) => (
          <li key={table.name}>{table.name}</li>
        ))}
    </ul>
  );
}
