// The photo of a job: taken or picked, shown, taken away again.

import { useEffect, useState } from 'preact/hooks';
import { tell } from '../../store/notices.ts';
import { dropPhoto, keepPhoto, keptPhoto } from './photos.ts';

const NOT_KEPT = 'The photo could not be kept in this browser.';

export function Photo({ of }: { readonly of: string }) {
  const [photo, setPhoto] = useState<Blob | undefined>(undefined);
  const [address, setAddress] = useState('');
  useEffect(() => {
    keptPhoto(of).then(setPhoto, () => undefined);
  }, [of]);
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
            if (file !== undefined) keepPhoto(of, file).then(setPhoto, () => tell(NOT_KEPT, 'refusal'));
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
