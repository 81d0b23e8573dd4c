// The types of set-up.mjs, for the tests that call it.

export function nodeIsNewEnough(version: string): boolean;
export function setUpPackages(): void;
export function setUpBrowser(): void;
export function chromiumPath(): string | undefined;
export function headlessChromiumPath(): string | undefined;
