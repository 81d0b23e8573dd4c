// The photo of a job: taken or picked, shown, taken away again.

import { useEffect, useState } from 'preact/hooks';
import { beginKeeping } from '../../keeping/beginning.ts';
import { keptAs } from '../../keeping/state.ts';
import { farmFigure } from '../../panels/read.ts';
import { tell } from '../../store/notices.ts';
import { workbook } from '../../store/workbook.ts';
import { dropPhoto, keepPhoto, keptPhoto, type OfJob } from './photos.ts';

const NOT_KEPT = 'The photo could not be kept in this browser.';

/** `past`: the job's day has come. */
export function Photo({ job, past }: Pick<OfJob, 'job' | 'past'>) {
  const [photo, setPhoto] = useState<Blob | undefined>(undefined);
  const [address, setAddress] = useState('');
  const kept = keptAs.value;
  const season = farmFigure(workbook(), 'season');
  const of: OfJob = { workbook: kept, season, job, past };
  useEffect(() => {
    keptPhoto(of).then(setPhoto, () => undefined);
  }, [kept, season, job, past]);
  useEffect(() => {
    setAddress('');
    if (photo === undefined) return undefined;
    // As a data address: the page's policy lets pictures in from nowhere else.
    const reader = new FileReader();
    reader.onload = () => setAddress(typeof reader.result === 'string' ? reader.result : '');
    reader.readAsDataURL(photo);
    return () => reader.abort();
  }, [photo]);
  return (
    <div class="today-photo">
      {address === '' ? null : <img src={address} alt="Taken with this job" />}
      <label class="photo-pick">
        {photo === undefined ? 'Take a photo' : 'Take another photo'}
        <input
          class="unseen"
          type="file"
          accept="image/*"
          capture="environment"
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            if (file !== undefined) take(of, file).then(setPhoto, () => tell(NOT_KEPT, 'refusal'));
          }}
        />
      </label>
      {photo === undefined ? null : (
        <button
          type="button"
          onClick={() => {
            dropPhoto(of).then(
              () => setPhoto(undefined),
              () => tell(NOT_KEPT, 'refusal'),
            );
          }}
        >
          Remove the photo
        </button>
      )}
    </div>
  );
}

/** A workbook that nobody changed yet is kept from its first photo on. */
async function take(of: OfJob, file: File): Promise<Blob> {
  if (keptAs.peek() === undefined) await beginKeeping();
  return keepPhoto({ ...of, workbook: keptAs.peek() }, file);
}
