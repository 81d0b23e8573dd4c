// Whether the dialog about how figures and days are written is open.

import { signal } from '@preact/signals';

export const localeDialog = signal(false);
