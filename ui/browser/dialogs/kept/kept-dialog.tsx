// The lists of what this browser keeps, in one dialog: the workbooks, and the versions of one of them.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { settings } from '../../../../engine/index.ts';
import { keptAs } from '../../keeping/state.ts';
import { workbook } from '../../store/workbook.ts';
import { keptList, shut } from '../kept-state.ts';
import { VersionsPart } from './versions-part.tsx';
import { WorkbooksPart } from './workbooks-part.tsx';
import './kept.css';

export function KeptDialog() {
  const list = keptList.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (list !== undefined && box.current?.open === false) box.current.showModal();
  }, [list]);
  if (list === undefined) return null;
  return (
    <dialog class="dialog kept-list" ref={box} aria-labelledby="kept-title" onClose={shut}>
      {list.shows === 'workbooks' ? <WorkbooksPart /> : <Versions of={list.workbook} />}
    </dialog>
  );
}

function Versions({ of }: { readonly of: { readonly id: string; readonly title: string } | undefined }) {
  const here = keptAs.value;
  if (of !== undefined && of.id !== here)
    return <VersionsPart key={of.id} id={of.id} title={of.title} onScreen={false} />;
  const { title } = settings(workbook());
  if (here !== undefined) return <VersionsPart key={here} id={here} title={title} onScreen />;
  return (
    <>
      <h2 id="kept-title">{`Versions of ${title}`}</h2>
      <p>It was not changed yet, so nothing of it is kept. With its first change it begins to be.</p>
      <div class="dialog-acts">
        <button type="button" onClick={shut}>
          Close
        </button>
      </div>
    </>
  );
}
