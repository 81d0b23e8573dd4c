// The reasons of a cell, whose code is fetched when they are first opened.

import { later } from '../../page/later.tsx';
import type { CellAt } from '../../store/selection.ts';

export const Reasons = later<CellAt>(() => import('./reasons.tsx').then((part) => part.Reasons));
