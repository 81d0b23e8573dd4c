// Which beds there are: their usual size, and how many.

import { useState } from 'preact/hooks';
import { message } from '../../../engine/index.ts';
import { BEDS } from '../panels/columns.ts';
import { askRows, inUnit, sumOf } from '../pictures/kit/ask.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { wholeNumber } from '../store/whole-number.ts';
import { workbook } from '../store/workbook.ts';
import { FarmField } from './farm-field.tsx';
import { bedCommands, bedCount, LAY_OUT_MORE, laidOutWords, MOST_BEDS } from './first-beds.ts';

export function BedsStep() {
  const book = workbook();
  const [count, setCount] = useState('10');
  const there = bedCount(book);
  const length = sumOf(askRows(book, BEDS), 'length');
  const add = (): void => {
    const wanted = wholeNumber(book, count);
    if (wanted === undefined || wanted < 1) {
      tell('How many beds? A whole number is wanted, such as 10.', 'refusal');
      return;
    }
    const done = change(
      bedCommands(book, wanted),
      message('add row', { row: `${Math.min(wanted, MOST_BEDS)} beds`, sheet: 'Beds' }),
    );
    if (done.refused) return;
    if (wanted > MOST_BEDS) setCount(String(wanted - MOST_BEDS));
    tell(laidOutWords(wanted), 'done', UNDO);
  };
  return (
    <section class="first-step" aria-labelledby="first-beds">
      <h3 id="first-beds">3. Which beds?</h3>
      <div class="fields">
        <FarmField column="bed-length" />
        <FarmField column="bed-width" />
      </div>
      <div class="first-field first-row">
        <label>
          How many{' '}
          <input
            class="first-count"
            type="text"
            inputMode="numeric"
            value={count}
            onInput={({ currentTarget }) => setCount(currentTarget.value)}
          />
        </label>
        <button type="button" onClick={add}>
          {there === 0 ? 'Lay them out' : LAY_OUT_MORE}
        </button>
      </div>
      <p class="first-says">
        {there === 0 || length === undefined
          ? 'Beds of other lengths are changed on the sheet Beds.'
          : `${there} ${there === 1 ? 'bed' : 'beds'}, ${inUnit(book, BEDS, 'length', length, 0)} in all.`}
      </p>
    </section>
  );
}
