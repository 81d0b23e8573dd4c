// The climate of the year in the page: a crop is chosen, its warmth is laid over the year.

import { useState } from 'preact/hooks';
import { workbook } from '../../store/workbook.ts';
import { Choice } from '../kit/choice.tsx';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { climateOfYear, cropsOf } from './climate.ts';

export function ClimatePicture() {
  const book = workbook();
  const crops = cropsOf(book);
  const [chosen, choose] = useState('');
  const crop = crops.find(({ name }) => name === chosen) ?? crops[0];
  const model = climateOfYear(book, crop);
  if (model === undefined) {
    return (
      <p class="no-picture">No climate yet: enter twelve months on Monthly climate, or bring in a station’s file.</p>
    );
  }
  const names = crops.map(({ name }) => ({ value: name, words: name }));
  return (
    <LinesPicture
      model={model}
      height={320}
      choices={crop === undefined ? null : <Choice label="Crop" value={crop.name} options={names} onChoose={choose} />}
    />
  );
}
