import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

// A zone with an odd offset, so that a forgotten time zone fails loudly.
process.env.TZ = 'Asia/Kathmandu';

export default defineConfig({
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: [
            'tests/unit/**/*.test.ts',
            'tests/published/**/*.test.ts',
            'tests/architecture/**/*.test.ts',
          ],
          // Pure tests share two processes: none of them changes what another sees. Vitest alone would take one of two processors.
          pool: 'forks',
          isolate: false,
          maxWorkers: Math.max(2, availableParallelism() - 1),
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'integration',
          include: ['tests/integration/**/*.test.ts'],
          globalSetup: ['tests/integration/support/global.ts'],
          setupFiles: ['tests/integration/support/setup.ts'],
          pool: 'forks',
          maxWorkers: 2,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
