// A farm whose season ends while garlic stands and kale is over, for tests of what goes into the next one.

import { civilDay, type Workbook } from '../../engine/index.ts';
import { latitudeOf, monthsOf } from '../reference/calendars.ts';
import { seasonOf } from './season.ts';

const PLACE = 'Raleigh NC';

/** On 1 December 2027, in cm and kg. */
export function garlicAndKale(): Workbook {
  const season = seasonOf(
    {
      'Monthly climate': monthsOf(PLACE),
      Varieties: [
        { Variety: 'Stone', Crop: 'Garlic' },
        { Variety: 'Frill', Crop: 'Kale' },
      ],
      Beds: ['B1', 'B2'].map((Bed) => ({ Bed, Length: '20 m' })),
      Plantings: [
        { Planting: 'Garlic', Variety: 'Stone', Bed: 'B1', 'Bed length used': '20 m' },
        { Planting: 'Kale', Variety: 'Frill', Bed: 'B2', 'Planted out': '2027-05-20' },
      ],
    },
    { Latitude: String(latitudeOf(PLACE)) },
    { today: civilDay(2027, 12, 1), units: 'si' },
  );
  return season.book.workbook;
}
