// The demo farm's plantings, one line each: onions from blocks in clumps, from cells as singles and from sets, and the rest
// of the garden. farm.ts reads it.

import { table } from './table.ts';

const ONIONS = table(
  'Planting | Variety | Start | Seed lot | Bed | Bed length used | Rows | In-row spacing | Seeds per station | Sown | Planted out | Price | Fresh price | Price of a set or plant',
  'Keeper clumps | Lamplight | blocks | | Barn 1 | | 4 | 8 in | 3.5 | 2027-02-15 | 2027-04-22 | 1.90 | |',
  'Keeper clumps, old seed first | Lamplight | blocks | Lamplight 2026 | Barn 2 | 25 ft | 4 | 7.5 in | 3.5 | 2027-02-15 | 2027-04-22 | 1.90 | |',
  'Keeper singles | Lamplight | cells | | Barn 2 | 25 ft | 5 | 3 in | 1 | 2027-02-18 | 2027-04-24 | 1.90 | |',
  'Red clumps | Copper Kettle | blocks | | Barn 3 | | 4 | 8 in | 4 | 2027-02-20 | 2027-04-26 | 2.20 | |',
  'Sweet singles | Porch Sweet | cells | | Creek 1 | 50 ft | 4 | 4 in | 1 | 2027-02-08 | 2027-04-22 | 2.60 | |',
  'Sweet clumps | Porch Sweet | blocks | | Creek 1 | 50 ft | 4 | 10 in | 2.5 | 2027-02-08 | 2027-04-22 | 2.60 | |',
  'Sets | Pocket Yellow | sets | | Orchard 3 | 40 ft | 5 | 3 in | 1 | | 2027-04-22 | 1.80 | | 0.03',
  'Back on the barn bed | Lamplight | blocks | | Barn 5 | 20 ft | 4 | 8 in | 3.5 | 2027-02-25 | 2027-05-01 | 1.90 | |',
  'Scallions | Winter Quill | blocks | | Orchard 1 | 20 ft | 5 | 6 in | 10 | 2027-03-01 | 2027-04-25 | | |',
  'Shallots | Fox Shallot | blocks | | Orchard 1 | 20 ft | 3 | 8 in | 3 | 2027-02-20 | 2027-04-24 | 3.50 | |',
  'Leeks | Blue Post | cells | | Creek 5 | 50 ft | 3 | 6 in | 1 | 2027-03-10 | 2027-05-12 | | |',
);

const REST = table(
  'Planting | Variety | Start | Seed lot | Bed | Bed length used | Rows | In-row spacing | Seeds per station | Sown | Planted out | Price | Price each | Pattern | Cover | Thin to | Fresh price',
  'Garlic | Stone Garlic | sets | | Creek 3 | 50 ft | 3 | 6 in | 1 | | 2026-10-10 | | 1.50 | | | |',
  'Carrots | Plain Orange | direct seed | | Creek 2 | 100 ft | 5 | 1.5 in | 2 | 2027-06-20 | | 1.60 | | | | |',
  'Beets, early | Round Red | blocks | Round Red 2025 | Creek 7 | 40 ft | 3 | 8 in | 3 | 2027-03-20 | 2027-04-26 | | 3.00 | | row cover | 4 | 2.00',
  'Lettuce 1 | Green Cushion | blocks | Green Cushion 2025 | Barn 4 | 25 ft | 3 | 10 in | 1 | 2027-03-22 | 2027-04-26 | | 2.50 | offset | row cover | |',
  'Lettuce 2 | Green Cushion | blocks | Green Cushion 2025 | Barn 4 | 25 ft | 3 | 10 in | 1 | 2027-04-20 | 2027-05-24 | | 2.50 | offset | none | |',
  'Salad mix | Six Leaves | direct seed | | Barn 5 | 15 ft | 10 | 0.5 in | 1.3 | 2027-05-05 | | 9.00 | | | | |',
  'Spinach | Smooth Green | direct seed | Smooth Green 2023 | Barn 3 | 50 ft | 5 | 2 in | 1.5 | 2027-08-25 | | 7.00 | | | | |',
  'Kale | Rough Kale | blocks | | Creek 3 | 50 ft | 2 | 14 in | 1 | 2027-04-10 | 2027-05-14 | | 3.00 | | | |',
  'Cabbage | White Keeper | blocks | White Keeper 2023 | Creek 4 | 60 ft | 2 | 18 in | 1 | 2027-05-05 | 2027-06-12 | 0.90 | | | | |',
  'Broccoli | Market Crown | blocks | | Creek 4 | 40 ft | 2 | 18 in | 1 | 2027-04-01 | 2027-05-06 | | 2.75 | | | |',
  'Radishes | Red Marble | direct seed | | Orchard 4 | 20 ft | 5 | 1.5 in | 1.2 | 2027-04-28 | | | 2.50 | | | |',
  'Tomatoes | Field Red | cells | Field Red 2024 | Creek 5 | 50 ft | 1 | 20 in | 1 | 2027-04-05 | 2027-05-22 | 3.20 | | | tunnel | |',
  'Cherry tomatoes | Gold Drop | cells | | Creek 6 | 50 ft | 1 | 20 in | 1 | 2027-04-05 | 2027-05-24 | 4.50 | | | | |',
  'Peppers | Bell Red | cells | | Orchard 2 | 40 ft | 2 | 16 in | 1 | 2027-03-25 | 2027-07-05 | 3.50 | | | | |',
  'Cucumbers | Long Slicer | cells | | Orchard 4 | 20 ft | 1 | 15 in | 1 | 2027-04-24 | 2027-05-14 | 1.80 | | | | |',
  'Winter squash | Green Turban | cells | | Creek 7 | 50 ft | 1 | 24 in | 1 | 2027-05-10 | 2027-06-05 | 1.10 | | | | |',
  'Beans | Short Bean | direct seed | | Creek 6 | 50 ft | 2 | 3 in | 1.2 | 2027-05-28 | | 3.60 | | | | |',
  'Peas | Sugar Pod | direct seed | | Barn 5 | 15 ft | 2 | 1.5 in | 1.3 | 2027-04-22 | | 5.00 | | | | |',
  'Basil | Broad Basil | cells | | Orchard 4 | 20 ft | 3 | 8 in | 3 | 2027-04-20 | 2027-06-02 | | 2.50 | | | |',
);

/** What is sown once, on the beds of the ridge and where spring crops have gone. */
const ONCE = table(
  'Planting | Variety | Start | Bed | Bed length used | Rows | Sown | Planted out | Price | Price each | Cover',
  'Chard | River Chard | blocks | Ridge 19 | 30 ft | 3 | 2027-04-20 | 2027-05-22 | | 3.00 |',
  'Parsley | Creek Parsley | cells | Ridge 19 | 20 ft | 3 | 2027-03-25 | 2027-05-15 | | 2.50 |',
  'Sweet corn 1 | Sweet Ear | direct seed | Ridge 17 | 60 ft | 2 | 2027-05-26 | | | 0.75 |',
  'Sweet corn 2 | Sweet Ear | direct seed | Ridge 18 | 60 ft | 2 | 2027-06-08 | | | 0.75 |',
  'Eggplants | Night Plum | cells | Ridge 24 | 40 ft | 1 | 2027-03-30 | 2027-06-06 | 3.80 | | tunnel',
  'Storage beets | Round Red | direct seed | Ridge 20 | 60 ft | 3 | 2027-06-28 | | 1.50 | |',
  'Storage carrots 2 | Plain Orange | direct seed | Ridge 21 | 60 ft | 5 | 2027-06-18 | | 1.60 | |',
  'Late kale | Rough Kale | blocks | Ridge 22 | 50 ft | 2 | 2027-06-10 | 2027-07-12 | | 3.00 |',
  'Late broccoli | Market Crown | blocks | Ridge 23 | 60 ft | 2 | 2027-06-12 | 2027-07-14 | | 2.75 |',
  'Late spinach | Smooth Green | direct seed | Orchard 3 | 40 ft | 5 | 2027-08-16 | | 7.00 | |',
);

export const PLANTINGS = [...ONIONS, ...REST, ...ONCE];
