// How much room what is kept takes, and whether the browser may clear it when room gets short.

import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { size } from './words.ts';

interface Props {
  /** Letters of what the list shows; undefined where that isn't known. */
  readonly letters: number | undefined;
  readonly of: string;
}

export function SpacePart({ letters, of }: Props) {
  const words = useSignal('');
  useEffect(() => {
    void spaceWords().then((found) => {
      words.value = found;
    });
  }, [letters]);
  const own = letters === undefined || letters === 0 ? '' : `${of} take ${size(letters)}. `;
  return <p class="kept-small">{own + words.value}</p>;
}

async function spaceWords(): Promise<string> {
  if (!('storage' in navigator)) return '';
  const { usage, quota } = await navigator.storage.estimate().catch((): StorageEstimate => ({}));
  const stays = await navigator.storage.persisted().catch(() => false);
  const room =
    usage === undefined || quota === undefined
      ? ''
      : `Dibble takes ${size(usage)} in this browser, which gives it up to ${size(quota)}. `;
  return `${room}${
    stays
      ? 'The browser promised to keep it until you clear it.'
      : 'The browser may clear it when the computer runs out of room: save to files too.'
  }`;
}
