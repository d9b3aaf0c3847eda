import { type Logger, pino } from 'pino';

const store = globalThis as typeof globalThis & { plumblineLogger?: Logger };

/** One line of JSON per event on standard output. Never bodies, names, words or scores: ids, codes and times only. */
export function logger(): Logger {
  store.plumblineLogger ??= pino({
    level: process.env.PLUMBLINE_LOG ?? (process.env.VITEST ? 'silent' : 'info'),
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: {
      paths: ['*.password', '*.token', '*.cookie', '*.email', 'password', 'token', 'cookie', 'email'],
      remove: true,
    },
    // `err` too: what the library makes of it holds the message.
    serializers: { error: toPlace, err: toPlace },
  });
  return store.plumblineLogger;
}

/** Kind, code and place of an error. Messages of the database can quote values, so they stay out. */
function toPlace(error: unknown): Record<string, unknown> {
  if (!(error instanceof Error)) return { kind: typeof error };
  const { code } = error as Error & { code?: unknown };
  const place = error.stack
    ?.split('\n')
    .filter((line) => line.trimStart().startsWith('at '))
    .slice(0, 8);
  return { kind: error.name, code, place };
}
