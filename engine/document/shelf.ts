// Contents that stand in no column just now: of columns that are gone, of rows that were removed or that no data makes at
// present, and what a column can't hold any more. Nothing typed is dropped: when its place comes back, so does it. For
// rows that follow from other data everything typed stays here too, since such rows come and go.

import type { CellMap } from './cell-map.ts';
import type { Content } from './content.ts';

export type Shelf = CellMap<Exclude<Content, null>>;
