// How seed lots age in the page: a lot is chosen, its line stands out among the others.

import { useState } from 'preact/hooks';
import { workbook } from '../../store/workbook.ts';
import { Choice } from '../kit/choice.tsx';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { ageingLots, seedViability } from './viability.ts';

export function ViabilityPicture() {
  const book = workbook();
  const lots = ageingLots(book);
  const [chosen, choose] = useState('');
  const lot = lots.find(({ id }) => id === chosen) ?? lots[0];
  const model = seedViability(book, lot?.id ?? '');
  if (model === undefined || lot === undefined) {
    return <p class="no-picture">No seed lot has a date and a germination yet: enter them on Seed lots.</p>;
  }
  const options = lots.map(({ id, name, variety }) => ({ value: id, words: `${name}, ${variety}` }));
  return (
    <LinesPicture
      model={model}
      height={320}
      choices={<Choice label="Lot" value={lot.id} options={options} onChoose={choose} />}
    />
  );
}
