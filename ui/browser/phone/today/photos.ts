// Photos that are kept beside the workbook in this browser, made small first. They are no part of the workbook or its file. The
// phone's day calls it.

import { type DBSchema, openDB } from 'idb';

interface Photos extends DBSchema {
  photos: { key: string; value: Blob };
}

/** The longer side of a photo that is kept, in pixels. */
const LONGEST = 1280;
const QUALITY = 0.8;

function photos() {
  return openDB<Photos>('dibble photos', 1, { upgrade: (db) => db.createObjectStore('photos') });
}

export async function keptPhoto(of: string): Promise<Blob | undefined> {
  return (await photos()).get('photos', of);
}

/** Makes a photo small and keeps it, in place of the one before. */
export async function keepPhoto(of: string, file: Blob): Promise<Blob> {
  const small = await madeSmall(file);
  await (await photos()).put('photos', small, of);
  return small;
}

export async function dropPhoto(of: string): Promise<void> {
  await (await photos()).delete('photos', of);
}

async function madeSmall(file: Blob): Promise<Blob> {
  const image = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST / Math.max(image.width, image.height));
  const canvas = new OffscreenCanvas(Math.round(image.width * scale), Math.round(image.height * scale));
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
}
