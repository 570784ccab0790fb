/** Tests run the program as it is shipped: it is built anew before them, so that none tests what was built earlier. */
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: 'tests/tools/build.ts',
    testTimeout: 60_000,
    maxWorkers: '100%',
    // No test changes what another reads; reading the source anew for each file would take a third of the time.
    isolate: false,
  },
});
