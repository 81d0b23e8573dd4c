// Whether the page of keys is open.

import { signal } from '@preact/signals';

export const keysPage = signal(false);
