// What comes of the answers to the first questions, and the way on.

import { useState } from 'preact/hooks';
import { sheetView } from '../../../engine/index.ts';
import { PLANTINGS } from '../panels/columns.ts';
import { askRows } from '../pictures/kit/ask.ts';
import { CalendarPicture } from '../pictures/season-calendar/calendar-picture.tsx';
import { columnOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';
import { bedCount } from './first-beds.ts';
import { goOnToGlance } from './way-back.ts';

/** What comes of the answers: each planting with what is usual for it, and the beds through the season. */
export function PlanSoFar() {
  const book = workbook();
  const plantings = askRows(book, PLANTINGS);
  const cells = ['start', 'in-row-spacing', 'rows', 'sown', 'planted-out', 'harvest', 'marketable-yield', 'bed'];
  const sheet = sheetView(book, PLANTINGS);
  const columns = cells.flatMap((id) => columnOf(sheet, id) ?? []);
  const waiting = plantings.filter((row) => row.text('bed') === '').length;
  const [trying, setTrying] = useState(false);
  return (
    <section class="first-plan" aria-labelledby="first-plan">
      <h3 id="first-plan">Your plan so far</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="Plantings so far">
        <table>
          <thead>
            <tr>
              <th scope="col">Planting</th>
              {columns.map(({ id, name }) => (
                <th key={id} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plantings.map((row) => (
              <tr key={row.id}>
                <th scope="row">{row.text('planting')}</th>
                {columns.map(({ id }) => (
                  <td key={id}>
                    {row.full(id) || (id === 'harvest' ? noHarvest(row.text('no-harvest-because')) : '')}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="first-acts">
        {waiting > 0 && bedCount(book) > 0 ? (
          <button
            type="button"
            disabled={trying}
            onClick={() => {
              setTrying(true);
              void proposeAll().finally(() => setTrying(false));
            }}
          >
            {`Find beds for the ${waiting === 1 ? 'one that has' : `${waiting} that have`} none`}
          </button>
        ) : null}
        <button type="button" class="primary" onClick={goOnToGlance}>
          To the season at a glance
        </button>
      </p>
      {bedCount(book) === 0 ? null : <CalendarPicture />}
    </section>
  );
}

/** Beds for all plantings without one, by the command that proposes them; its code is fetched when first asked for. */
async function proposeAll(): Promise<void> {
  const { placeBeds } = await import('../commands/plan-acts.ts');
  await placeBeds();
}

/** 'None: cold ends it about 22 Sep, with 64% of the warmth it needs.' */
function noHarvest(why: string): string {
  return why === '' ? '' : `None: ${why}.`;
}
