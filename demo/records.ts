// What the demo farm wrote down in 2026: a spacing trial of its keeper and the dates its onions bulbed and fell. Made up.
// farm.ts reads it.

import { table } from './table.ts';

export const TRIALS = table(
  'Plot | Variety | Grown in | Plants | Area | Weight | Notes',
  'Barn 4, 12 in | Lamplight | 2026 | 20 | 10 ft2 | 9.6 lb | Very large, some doubles',
  'Barn 4, 10 in | Lamplight | 2026 | 35 | 10 ft2 | 11.3 lb |',
  'Barn 4, 8 in | Lamplight | 2026 | 50 | 10 ft2 | 13.7 lb | As usual',
  'Barn 4, 7 in | Lamplight | 2026 | 70 | 10 ft2 | 13.9 lb |',
  'Barn 4, 6 in | Lamplight | 2026 | 95 | 10 ft2 | 15.7 lb | Most of them small',
  'Barn 4, 5 in | Lamplight | 2026 | 130 | 10 ft2 | 15.5 lb | Pickling size',
);

export const BULBING_RECORDS = table(
  'Variety | Bulbs started | Tops down | Notes',
  'Lamplight | 2025-05-29 | 2025-08-04 |',
  'Lamplight | 2026-05-31 | 2026-08-07 | A wet July',
);
