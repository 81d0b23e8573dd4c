// Photos that are kept beside the workbook in this browser, made small first: each of a job of one workbook's season. They are no part
// of the workbook or its file. The phone's day calls it.

import { type DBSchema, openDB } from 'idb';

interface Photos extends DBSchema {
  photos: { key: string; value: Blob };
}

/** What a photo is of. */
export interface OfJob {
  /** The id under which the workbook is kept; undefined for one that was not changed yet. */
  readonly workbook: string | undefined;
  /** The year that it plans: a season rolled over has rows of the same ids. */
  readonly season: number | undefined;
  /** The job's row. */
  readonly job: string;
  /** Its day has come. */
  readonly past: boolean;
}

/** The longer side of a photo that is kept, in pixels. */
const LONGEST = 1280;
const QUALITY = 0.8;

function photos() {
  return openDB<Photos>('dibble photos', 1, { upgrade: (db) => db.createObjectStore('photos') });
}

/** Under what a photo is kept; undefined where the workbook is not kept itself. */
export function photoKey({ workbook, season, job }: OfJob): string | undefined {
  return workbook === undefined ? undefined : `${workbook} ${season ?? ''} tasks ${job}`;
}

/** Under what photos were kept before they said of which workbook they are. */
export function formerKey({ job }: OfJob): string {
  return `tasks ${job}`;
}

/**
 * The photo of a job. One from before photos said of which workbook they are belongs to the first whose job it can be of, one whose
 * day has come, and is kept as its from then on.
 */
export async function keptPhoto(of: OfJob): Promise<Blob | undefined> {
  const key = photoKey(of);
  const { store, done } = (await photos()).transaction('photos', 'readwrite');
  const own = key === undefined ? undefined : await store.get(key);
  const former = own === undefined && of.past ? await store.get(formerKey(of)) : undefined;
  if (former !== undefined && key !== undefined) {
    await store.put(former, key);
    await store.delete(formerKey(of));
  }
  await done;
  return own ?? former;
}

/** Makes a photo small and keeps it, in place of the one before. Rejects where the workbook is not kept. */
export async function keepPhoto(of: OfJob, file: Blob): Promise<Blob> {
  const key = photoKey(of);
  if (key === undefined) throw new Error('A photo is kept beside a workbook that is kept.');
  const small = await madeSmall(file);
  await (await photos()).put('photos', small, key);
  return small;
}

export async function dropPhoto(of: OfJob): Promise<void> {
  await (await photos()).delete('photos', photoKey(of) ?? formerKey(of));
}

async function madeSmall(file: Blob): Promise<Blob> {
  const image = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST / Math.max(image.width, image.height));
  const canvas = new OffscreenCanvas(Math.round(image.width * scale), Math.round(image.height * scale));
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
}
