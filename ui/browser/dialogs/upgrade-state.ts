// What bringing the sheets up to date would change, while it waits for a yes. The dialog draws it.

import { signal } from '@preact/signals';
import type { Upgrade } from '../../../engine/index.ts';

/** The upgrade that waits for a yes; undefined where none does. */
export const pendingUpgrade = signal<Upgrade | undefined>(undefined);
