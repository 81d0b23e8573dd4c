// What stands above the sheet while a branch is on screen, or something drawn is kept. Desk and phone mount it.

import { later } from '../page/later.tsx';
import { BranchBar } from './branch-bar.tsx';
import { likelyKept } from './likely-kept.ts';

const LikelyBar = later(() => import('./likely-bar.tsx').then((part) => part.LikelyBar));

export function Bars() {
  return (
    <>
      <BranchBar />
      {likelyKept.value === undefined ? null : <LikelyBar />}
    </>
  );
}
