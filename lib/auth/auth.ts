import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { APIError, createAuthMiddleware } from 'better-auth/api';
import { env } from '#lib/config/env.ts';
import { accountDb } from '#lib/db/client.ts';
import { countRequest } from '#lib/db/rate-limits.ts';
import { logger } from '#lib/logger.ts';
import { noteSignIn } from './note-sign-in.ts';
import { signInAs } from './sign-in-as.ts';

/** Set by our own route only, after the header of that name from outside was thrown away. */
export const ADDRESS_HEADER = 'x-plumbline-address';
export const PASSWORD_LENGTH = { min: 12, max: 128 } as const;

const DAY = 24 * 3600;
/** Cookies last as long as browsers let them; how long a sign-in counts is decided in session-life.ts by role. */
const COOKIE_SECONDS = 400 * DAY;
const TRIES_PER_ACCOUNT = { max: 5, windowSeconds: 60 };
const TRIES_PER_ADDRESS = { max: 20, window: 60 };
/** Nobody trustworthy says where requests come from: all people who sign in share this count. */
const TRIES_OF_EVERYBODY = { max: 120, window: 60 };

function makeAuth() {
  const { PLUMBLINE_ORIGIN, PLUMBLINE_SECRET } = env();
  const https = PLUMBLINE_ORIGIN.startsWith('https://');
  return betterAuth({
    baseURL: PLUMBLINE_ORIGIN,
    basePath: '/api/auth',
    secret: PLUMBLINE_SECRET,
    trustedOrigins: [PLUMBLINE_ORIGIN],
    database: prismaAdapter(accountDb(), { provider: 'postgresql' }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_LENGTH.min,
      maxPasswordLength: PASSWORD_LENGTH.max,
    },
    session: { expiresIn: COOKIE_SECONDS, disableSessionRefresh: true, cookieCache: { enabled: false } },
    rateLimit: {
      enabled: true,
      customStorage: { consume },
      customRules: {
        '/sign-in/email': (request) =>
          request.headers.has(ADDRESS_HEADER) ? TRIES_PER_ADDRESS : TRIES_OF_EVERYBODY,
      },
    },
    hooks: { before: createAuthMiddleware(limitPerAccount) },
    databaseHooks: { session: { create: { after: (session) => noteSignIn(session.userId) } } },
    advanced: {
      database: { generateId: 'uuid' },
      useSecureCookies: false,
      cookies: {
        session_token: { name: `${https ? '__Host-' : ''}plumbline`, attributes: { secure: https } },
      },
      ipAddress: { ipAddressHeaders: [ADDRESS_HEADER] },
    },
    plugins: [signInAs()],
    telemetry: { enabled: false },
    logger: { log: (level, message) => logger()[level]({ from: 'better-auth' }, message) },
  });
}

/** The limiter of better-auth on our own atomic counter: its own forgets longer windows than it knows of. */
async function consume(key: string, rule: { window: number; max: number }) {
  const { allowed, retryAfterSeconds } = await countRequest(`auth|${key}`, {
    max: rule.max,
    windowSeconds: rule.window,
  });
  return { allowed, retryAfter: allowed ? null : retryAfterSeconds };
}

/** Holds for every way in, also for calls from the server, and whatever address the tries come from. */
async function limitPerAccount(context: { path?: string; body?: unknown }): Promise<void> {
  if (context.path !== '/sign-in/email') return;
  const { email } = (context.body ?? {}) as { email?: unknown };
  if (typeof email !== 'string') return;
  const { allowed, retryAfterSeconds } = await countRequest(
    `sign-in|${email.toLowerCase().slice(0, 254)}`,
    TRIES_PER_ACCOUNT,
  );
  if (allowed) return;
  throw new APIError(
    'TOO_MANY_REQUESTS',
    { message: 'Too many tries.' },
    { 'retry-after': String(retryAfterSeconds) },
  );
}

type Auth = ReturnType<typeof makeAuth>;
const store = globalThis as typeof globalThis & { plumblineAuth?: { auth: Auth; db: unknown } };

/** better-auth, set up once per process (and again after the database connection was renewed). */
export function auth(): Auth {
  const db = accountDb();
  if (store.plumblineAuth?.db !== db) store.plumblineAuth = { auth: makeAuth(), db };
  return store.plumblineAuth.auth;
}
