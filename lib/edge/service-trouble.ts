export type ServiceTrouble = { message: string; retryAfterSeconds: number };

const FULL = ['53100', 'ENOSPC'];
const CROWDED = ['53000', '53200', '53300', '53400', 'P2024', 'P2028', 'P2037'];
const BUSY = ['40001', '40P01', '55P03', '57014', 'P2034'];
const AWAY = [
  ...['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ETIMEDOUT', 'ENOTFOUND', 'EHOSTUNREACH'],
  ...['57P01', '57P02', '57P03', 'P1001', 'P1002', 'P1008', 'P1017'],
];
/** Of the drivers, whose errors for these carry no code. */
const CROWDED_WORDS = /timeout exceeded when trying to connect|unable to start a transaction/i;
const AWAY_WORDS =
  /connection terminated|connection ended|not queryable|server closed the connection|client has encountered a connection error|database server|closed connection/i;

const SAID: readonly [isThis: (sign: string) => boolean, said: ServiceTrouble][] = [
  [
    (sign) => FULL.includes(sign),
    {
      message:
        'There is no room left on the server. Nothing of this was kept there: keep it, and try again later.',
      retryAfterSeconds: 300,
    },
  ],
  [
    (sign) => CROWDED.includes(sign) || CROWDED_WORDS.test(sign),
    {
      message: 'The server is busy with too many requests. Nothing of this was kept: try again in a minute.',
      retryAfterSeconds: 30,
    },
  ],
  [
    (sign) => BUSY.includes(sign),
    {
      message: 'Somebody else changed the same at this moment. Nothing of this was kept: try again.',
      retryAfterSeconds: 5,
    },
  ],
  [
    (sign) => AWAY.includes(sign) || /^08/.test(sign) || AWAY_WORDS.test(sign),
    {
      message: 'The database was not reached. In a minute, look whether this was kept before you repeat it.',
      retryAfterSeconds: 15,
    },
  ],
];

/**
 * What is wrong with the service when a request failed through no fault of its own, in words and with how long to wait;
 * null when it is anything else. Looks at the codes of PostgreSQL, of the network and of Prisma, through all causes.
 */
export function serviceTrouble(error: unknown): ServiceTrouble | null {
  const signs = signsOf(error, 6);
  return SAID.find(([isThis]) => signs.some(isThis))?.[1] ?? null;
}

function signsOf(error: unknown, depth: number): string[] {
  if (typeof error !== 'object' || error === null || depth === 0) return [];
  const { code, originalCode, message, cause, errors, meta, body } = error as Record<string, unknown>;
  const here = [code, originalCode, message].filter((each) => typeof each === 'string');
  const below = [cause, meta, body, ...(Array.isArray(errors) ? errors : [])];
  const driver = (meta as { driverAdapterError?: unknown } | undefined)?.driverAdapterError;
  return [...here, ...[...below, driver].flatMap((each) => signsOf(each, depth - 1))];
}
