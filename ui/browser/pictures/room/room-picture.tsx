// Bench, racks, stores and hours by week in the page, one under the other on the same days.

import { workbook } from '../../store/workbook.ts';
import { ColumnsPicture } from '../kit/columns-picture.tsx';
import { roomPictures } from './room.ts';

export function RoomPicture() {
  const models = roomPictures(workbook());
  if (models.length === 0) {
    return <p class="no-picture">Nothing wants room yet: enter plantings with their dates first.</p>;
  }
  return (
    <div class="picture-stack">
      {models.map((model) => (
        <ColumnsPicture key={model.title} model={model} height={150} />
      ))}
    </div>
  );
}
