// The versions of one workbook: kept by hand with a name, or by themselves; each compared with the present, brought back, named,
// opened beside, downloaded.

import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { faultWords } from '../../keeping/faults.ts';
import { keepVersionNow } from '../../keeping/keep-version.ts';
import type { VersionRecord } from '../../keeping/records.ts';
import { faultOf } from '../../keeping/storage.ts';
import { when } from '../../keeping/times.ts';
import { forgetVersion, nameVersion, versionsOf } from '../../keeping/versions.ts';
import { keptList, shut } from '../kept-state.ts';
import { ComparisonPart } from './comparison-part.tsx';
import { Naming } from './naming.tsx';
import { SpacePart } from './space-part.tsx';
import { type Compared, compareVersion, downloadVersion, openBeside } from './versions-acts.ts';
import { changesIn, reason, size } from './words.ts';

interface Props {
  readonly id: string;
  readonly title: string;
  /** Whether it is the workbook on screen. */
  readonly onScreen: boolean;
}

export function VersionsPart({ id, title, onScreen }: Props) {
  const versions = useSignal<readonly VersionRecord[] | undefined>(undefined);
  const why = useSignal('');
  const compared = useSignal<Compared | 'comparing' | undefined>(undefined);
  const load = (): Promise<void> =>
    versionsOf(id).then(
      (found) => {
        versions.value = found;
      },
      (problem: unknown) => {
        versions.value = [];
        why.value = faultWords(faultOf(problem));
      },
    );
  const doing = (work: Promise<unknown>): void => {
    why.value = '';
    work.then(load, (problem: unknown) => {
      why.value = faultWords(faultOf(problem));
    });
  };
  useEffect(() => void load(), [id]);
  if (compared.value !== undefined && compared.value !== 'comparing') {
    const back = (): void => {
      compared.value = undefined;
    };
    return <ComparisonPart compared={compared.value} onBack={back} />;
  }
  const compare = async (version: VersionRecord): Promise<void> => {
    compared.value = 'comparing';
    const answer = await compareVersion(version);
    compared.value = answer.ok ? answer : undefined;
    why.value = answer.ok ? '' : answer.why;
  };
  return (
    <>
      <h2 id="kept-title">{`Versions of ${title}`}</h2>
      {onScreen ? <KeepNow keep={(name) => doing(keepVersionNow('named', undefined, name))} /> : null}
      {why.value === '' ? null : <p class="refusal">{why.value}</p>}
      {compared.value === 'comparing' ? <p role="status">Comparing with the present ...</p> : null}
      <ul class="kept-rows" aria-label="Versions">
        {versions.value?.map((version) => (
          <Version
            key={version.id}
            version={version}
            title={title}
            onCompare={onScreen ? () => void compare(version) : undefined}
            doing={doing}
            say={(sentence) => {
              why.value = sentence;
            }}
          />
        ))}
      </ul>
      {versions.value?.length === 0 && why.value === '' ? <p>There is none yet.</p> : null}
      <SpacePart letters={versions.value?.reduce((sum, each) => sum + each.size, 0)} of="These versions" />
      <p class="kept-small">
        Versions are kept when a workbook is opened, on each day it is worked in, and before what changes much. With age
        they become fewer: after two days one a day is left, after a month one a week, after a year one a month. Those
        with a name stay.
      </p>
      <div class="dialog-acts">
        <button
          type="button"
          onClick={() => {
            keptList.value = { shows: 'workbooks' };
          }}
        >
          All workbooks
        </button>
        <button type="button" onClick={shut}>
          Close
        </button>
      </div>
    </>
  );
}

function KeepNow({ keep }: { readonly keep: (name: string) => void }) {
  return <Naming label="Keep how it stands now as" button="Keep" begin="" take={keep} stays />;
}

interface VersionProps {
  readonly version: VersionRecord;
  readonly title: string;
  readonly onCompare: (() => void) | undefined;
  readonly doing: (work: Promise<unknown>) => void;
  /** Shows why something could not be done; '' takes what was shown away. */
  readonly say: (why: string) => void;
}

function Version({ version, title, onCompare, doing, say }: VersionProps) {
  const naming = useSignal(false);
  const { id, kind, at, name = '' } = version;
  const aside = kind === 'set aside';
  const changes = changesIn(version);
  const take = (next: string): void => {
    naming.value = false;
    doing(nameVersion(id, next));
  };
  return (
    <li>
      <p>
        <b>{reason(version)}</b> <span class="kept-small">{`${when(at)}, ${size(version.size)}`}</span>
      </p>
      {changes === '' ? null : <p class="kept-small">{changes}</p>}
      {naming.value ? <Naming label="Name of this version" button="Take the name" begin={name} take={take} /> : null}
      <p class="kept-acts">
        {aside || onCompare === undefined ? null : (
          <button type="button" onClick={onCompare}>
            Compare with the present
          </button>
        )}
        {aside ? null : (
          <>
            <button
              type="button"
              onClick={() => {
                shut();
                void openBeside(version);
              }}
            >
              Open beside
            </button>
            <button
              type="button"
              onClick={() => {
                naming.value = !naming.value;
              }}
            >
              {name === '' ? 'Name it' : 'Rename'}
            </button>
          </>
        )}
        <button type="button" onClick={() => void downloadVersion(version, title).then(say)}>
          Download
        </button>
        <button type="button" onClick={() => doing(forgetVersion(id))}>
          Forget
        </button>
      </p>
    </li>
  );
}
