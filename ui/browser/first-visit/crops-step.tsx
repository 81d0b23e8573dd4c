// What a person grows: crops of the library, found as people call them, each ticked or not.

import { useState } from 'preact/hooks';
import { change } from '../store/change.ts';
import { goTo } from '../store/selection.ts';
import { workbook, workbookNow } from '../store/workbook.ts';
import { cropsFound, toggleCrop } from './first-crops.ts';

/** So many are shown before one is looked for, and so many of those found. */
const SHOWN = 12;
const FOUND = 24;

export function CropsStep() {
  const book = workbook();
  const [typed, setTyped] = useState('');
  const found = cropsFound(book, typed);
  const ticked = cropsFound(book, '').filter(({ planting }) => planting !== undefined);
  const shown = typed.trim() === '' ? [...ticked, ...found.filter(({ planting }) => planting === undefined)] : found;
  const most = typed.trim() === '' ? Math.max(SHOWN, ticked.length) : FOUND;
  return (
    <section class="first-step" aria-labelledby="first-crops">
      <h3 id="first-crops">4. What do you grow?</h3>
      <label class="first-field">
        Find a crop
        <input
          type="search"
          placeholder="lettuce, carrots, tomatoes"
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        />
      </label>
      <ul class="first-crops">
        {shown.slice(0, most).map((crop) => (
          <li key={crop.name}>
            <label>
              <input
                type="checkbox"
                checked={crop.planting !== undefined}
                onChange={() => {
                  const now = workbookNow();
                  if (now === undefined) return;
                  const { commands, said } = toggleCrop(now, crop);
                  change(commands, said);
                }}
              />
              {crop.name}
            </label>
          </li>
        ))}
      </ul>
      <p class="first-says">
        {found.length === 0
          ? `The library has no crop that is called “${typed.trim()}”, nor one that is also called so. Add it on the sheet Crops, and it is found here.`
          : shown.length > most
            ? `${found.length} crops in all: type to find the others.`
            : `${found.length} found.`}
      </p>
      {found.length === 0 ? (
        <p>
          <button type="button" onClick={() => goTo('crops')}>
            Open Crops
          </button>
        </p>
      ) : null}
    </section>
  );
}
