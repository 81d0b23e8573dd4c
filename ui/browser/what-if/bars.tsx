// What stands above the sheet while a branch is on screen, or something drawn is kept. Desk and phone mount it.

import { later } from '../page/later.tsx';
import { branchOnScreen } from '../store/workbook.ts';
import { likelyKept } from './likely-kept.ts';

const BranchBar = later(() => import('./branch-bar.tsx').then((part) => part.BranchBar));
const LikelyBar = later(() => import('./likely-bar.tsx').then((part) => part.LikelyBar));

export function Bars() {
  return (
    <>
      {branchOnScreen.value === undefined ? null : <BranchBar />}
      {likelyKept.value === undefined ? null : <LikelyBar />}
    </>
  );
}
