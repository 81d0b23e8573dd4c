import { defineConfig } from 'vitest/config';

// Tests run in plain Node; the browser journeys start their own server and drive the system's Chromium.
export default defineConfig({
  test: { include: ['tests/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 120_000 },
});
