// The workbooks that this browser keeps, side by side: opened, copied, renamed, put by, taken out with a way back.

import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { message } from '../../../../engine/index.ts';
import { faultWords } from '../../keeping/faults.ts';
import { copyWorkbook, forgetWorkbook, layWorkbook, retitleWorkbook, WAY_BACK } from '../../keeping/laying.ts';
import type { Lying, WorkbookRecord } from '../../keeping/records.ts';
import { keptAs } from '../../keeping/state.ts';
import { faultOf } from '../../keeping/storage.ts';
import { openKept } from '../../keeping/switching.ts';
import { when } from '../../keeping/times.ts';
import { workbooksHere } from '../../keeping/workbooks.ts';
import { change } from '../../store/change.ts';
import { keptList, shut } from '../kept-state.ts';
import { Naming } from './naming.tsx';
import { SpacePart } from './space-part.tsx';

const LISTS: readonly (readonly [Lying, string])[] = [
  ['at hand', 'At hand'],
  ['put by', 'Put by'],
  ['taken out', 'Taken out'],
];

export function WorkbooksPart() {
  const all = useSignal<readonly WorkbookRecord[] | undefined>(undefined);
  const why = useSignal('');
  const load = (): Promise<void> =>
    workbooksHere().then(
      (found) => {
        all.value = found;
      },
      (problem: unknown) => {
        all.value = [];
        why.value = faultWords(faultOf(problem));
      },
    );
  const doing = (work: Promise<unknown>): void => {
    why.value = '';
    work.then(load, (problem: unknown) => {
      why.value = faultWords(faultOf(problem));
    });
  };
  const here = keptAs.value;
  useEffect(() => void load(), [here]);
  return (
    <>
      <h2 id="kept-title">Workbooks in this browser</h2>
      {why.value === '' ? null : <p class="refusal">{why.value}</p>}
      {all.value?.length === 0 && why.value === '' ? (
        <p>There is none yet: the workbook on screen is kept from its first change on.</p>
      ) : null}
      <div class="kept-scroll">
        {LISTS.map(([lying, title]) => {
          const list = all.value?.filter((each) => each.lying === lying) ?? [];
          if (list.length === 0) return null;
          return (
            <section key={lying} aria-label={title}>
              <h3>{title}</h3>
              <ul class="kept-rows">
                {list.map((record) => (
                  <Workbook key={record.id} record={record} onScreen={record.id === here} doing={doing} />
                ))}
              </ul>
            </section>
          );
        })}
      </div>
      <SpacePart letters={undefined} of="" />
      <div class="dialog-acts">
        <button type="button" onClick={shut}>
          Close
        </button>
      </div>
    </>
  );
}

interface WorkbookProps {
  readonly record: WorkbookRecord;
  readonly onScreen: boolean;
  readonly doing: (work: Promise<unknown>) => void;
}

function Workbook({ record, onScreen, doing }: WorkbookProps) {
  const naming = useSignal(false);
  const { id, title, lying } = record;
  const rename = (next: string): void => {
    naming.value = false;
    if (next === title) return;
    // The one on screen is renamed by a step of its own; its record follows.
    if (onScreen) change([{ command: 'set title', title: next }], message('set title', { title: next }));
    doing(onScreen ? Promise.resolve() : retitleWorkbook(id, next));
  };
  return (
    <li>
      <p>
        <b>{title}</b> <span class="kept-small">{tellOf(record, onScreen)}</span>
      </p>
      {naming.value ? <Naming label="Its name" button="Take the name" begin={title} take={rename} /> : null}
      <p class="kept-acts">
        {lying === 'taken out' ? (
          <>
            <Act label="Bring back" of={title} run={() => doing(layWorkbook(id, 'at hand'))} />
            <Act label="Forget now" of={title} run={() => doing(forgetWorkbook(id))} />
          </>
        ) : (
          <>
            <Act
              label="Open"
              of={title}
              disabled={onScreen}
              run={() => {
                shut();
                void layAndOpen(record);
              }}
            />
            <Act label="Copy" of={title} run={() => doing(copyWorkbook(id, `${title}, copy`))} />
            <Act
              label="Rename"
              of={title}
              run={() => {
                naming.value = !naming.value;
              }}
            />
            {lying === 'put by' ? (
              <Act label="Take up again" of={title} run={() => doing(layWorkbook(id, 'at hand'))} />
            ) : (
              <Act label="Put by" of={title} disabled={onScreen} run={() => doing(layWorkbook(id, 'put by'))} />
            )}
            <Act label="Take out" of={title} disabled={onScreen} run={() => doing(layWorkbook(id, 'taken out'))} />
          </>
        )}
        <Act
          label="Versions"
          of={title}
          run={() => {
            keptList.value = { shows: 'versions', workbook: { id, title } };
          }}
        />
      </p>
    </li>
  );
}

async function layAndOpen({ id, title, lying }: WorkbookRecord): Promise<void> {
  if (lying === 'put by') await layWorkbook(id, 'at hand').catch(() => undefined);
  await openKept(id, title);
}

/** 'on screen', 'worked in 2027-03-04 16:20; file season.json of 2027-03-01 08:00', 'gone for good on 2027-04-02 10:00'. */
function tellOf({ worked, since, lying, file }: WorkbookRecord, onScreen: boolean): string {
  if (lying === 'taken out') return `gone for good on ${when(since + WAY_BACK)}`;
  const own = file === undefined ? 'no file yet' : `file ${file.name} of ${when(file.at)}`;
  return `${onScreen ? 'on screen' : `worked in ${when(worked)}`}; ${own}`;
}

interface ActProps {
  readonly label: string;
  /** The workbook's title, for those who hear the button without seeing where it stands. */
  readonly of: string;
  readonly disabled?: boolean;
  readonly run: () => void;
}

function Act({ label, of, disabled = false, run }: ActProps) {
  return (
    <button type="button" disabled={disabled} aria-label={`${label}: ${of}`} onClick={run}>
      {label}
    </button>
  );
}
