import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

// A zone with an odd offset, so that a forgotten time zone fails loudly.
process.env.TZ = 'Asia/Kathmandu';

/** Files that take half a minute begin first: at the end one of them would run alone. */
const LONG = ['faults', 'error-paths', 'standings', 'drill', 'permissions', 'words-kept-out'];

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => {
      const at = LONG.findIndex((name) => moduleId.includes(`/${name}.test.ts`));
      return at < 0 ? LONG.length : at;
    };
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}

export default defineConfig({
  test: {
    sequence: { sequencer: LongestFirst },
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
