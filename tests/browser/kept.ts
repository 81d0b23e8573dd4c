// Looks into what the page keeps in the browser, and damages it, for the tests of keeping.

import type { Page } from 'playwright-core';

const DATABASE = 'dibble workbooks';

/** All records of a store of the page's database. */
export function keptRecords(page: Page, store: string): Promise<readonly Readonly<Record<string, unknown>>[]> {
  return page.evaluate(
    ([database, name]) =>
      new Promise<Record<string, unknown>[]>((resolve, reject) => {
        const opening = indexedDB.open(database);
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const asked = opening.result.transaction(name, 'readonly').objectStore(name).getAll();
          asked.onerror = () => reject(asked.error);
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result);
          };
        };
      }),
    [DATABASE, store] as const,
  );
}

/** Writes records over those in a store of the page's database. */
export function putRecords(
  page: Page,
  store: string,
  records: readonly Readonly<Record<string, unknown>>[],
): Promise<void> {
  return page.evaluate(
    ([database, name, all]) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open(database);
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(name, 'readwrite');
          for (const record of all) transaction.objectStore(name).put(record);
          transaction.onabort = () => reject(transaction.error);
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    [DATABASE, store, records] as const,
  );
}

/** Puts a text where the first Dibble kept its working copy. */
export function putFirstCopy(page: Page, text: string): Promise<void> {
  return page.evaluate(
    (copy) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('dibble', 1);
        opening.onupgradeneeded = () => opening.result.createObjectStore('copies');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('copies', 'readwrite');
          transaction.objectStore('copies').put({ text: copy, at: 0 }, 'latest');
          transaction.onabort = () => reject(transaction.error);
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    text,
  );
}

/** Forgets what the page keeps, as if it had never been here. */
export function forgetKept(page: Page): Promise<void> {
  return page.evaluate(
    (database) =>
      new Promise<void>((resolve, reject) => {
        const going = indexedDB.deleteDatabase(database);
        going.onerror = () => reject(going.error);
        going.onsuccess = () => resolve();
      }),
    DATABASE,
  );
}
