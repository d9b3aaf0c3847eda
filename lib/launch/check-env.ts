import { parseEnv } from '#lib/config/env.ts';

// Run before web and worker start: a missing or example secret ends it here, in words that name the variable.
try {
  parseEnv(process.env);
} catch (error) {
  process.stderr.write(`${(error as Error).message}\n`);
  process.exitCode = 1;
}
