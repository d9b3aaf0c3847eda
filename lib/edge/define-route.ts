import { z } from 'zod';
import { type Actor, actorOf } from '#lib/auth/actor.ts';
import { may, type Permission } from '#lib/auth/permissions.ts';
import { now } from '#lib/clock.ts';
import { env } from '#lib/config/env.ts';
import { AppError } from '#lib/errors.ts';
import { assertOwnOrigin } from './check-origin.ts';
import { errorResponse } from './error-response.ts';
import { jsonAnswer } from './json-answer.ts';
import { parseWith } from './parse-with.ts';
import { limitRequest, type RequestLimit } from './rate-limit.ts';
import { readBody } from './read-body.ts';

const MAX_BYTES = 64 * 1024;
const nothing = z.unknown();

type Options<Params extends z.ZodType, Query extends z.ZodType, Body extends z.ZodType> = {
  readonly permission: Exclude<Permission, 'open'>;
  readonly params?: Params;
  readonly query?: Query;
  readonly body?: Body;
  /** Longest body in bytes; 64 KB when left out. */
  readonly maxBytes?: number;
  /** How often one actor may do this. */
  readonly limit?: RequestLimit;
};
export type RouteInput<Params, Query, Body> = {
  readonly actor: Actor;
  readonly params: Params;
  readonly query: Query;
  readonly body: Body;
  readonly request: Request;
  readonly now: Date;
};
/** What Next hands to an exported GET or POST. */
export type RouteContext = { params: Promise<unknown> };
export type RouteHandler = (request: Request, context: RouteContext) => Promise<Response>;

/**
 * One route: own pages only, signed in, allowed, not too often, parsed; then the handler. It returns a Response, a
 * value for JSON, or undefined (204). A parameter that cannot be an id answers like an id that is not there.
 */
export function defineRoute<
  Params extends z.ZodType = typeof nothing,
  Query extends z.ZodType = typeof nothing,
  Body extends z.ZodType = typeof nothing,
>(
  options: Options<Params, Query, Body>,
  handler: (input: RouteInput<z.output<Params>, z.output<Query>, z.output<Body>>) => unknown,
): RouteHandler {
  return async (request, context) => {
    try {
      assertOwnOrigin(request, {
        origin: env().PLUMBLINE_ORIGIN,
        production: env().NODE_ENV === 'production',
      });
      const actor = await actorOf(request.headers);
      if (!actor) throw new AppError('signed-out', 'You are signed out. Sign in and repeat this.');
      if (!may(actor.role, options.permission))
        throw new AppError('forbidden', 'Your role in this team does not allow this.');
      if (options.limit) await limitRequest(options.limit, actor.userId);
      const input = {
        actor,
        params: await parseParams(options.params, context),
        query: parsePart(options.query, Object.fromEntries(new URL(request.url).searchParams)),
        body: options.body
          ? parseWith(options.body, await readBody(request, options.maxBytes ?? MAX_BYTES))
          : undefined,
        request,
        now: now(),
      } as RouteInput<z.output<Params>, z.output<Query>, z.output<Body>>;
      return toResponse(await handler(input));
    } catch (error) {
      return errorResponse(error, request);
    }
  };
}

async function parseParams(schema: z.ZodType | undefined, context: RouteContext): Promise<unknown> {
  if (!schema) return undefined;
  const parsed = schema.safeParse(await context.params);
  if (!parsed.success) throw new AppError('not-found', 'This is not there, or not in your team.');
  return parsed.data;
}

function parsePart(schema: z.ZodType | undefined, value: unknown): unknown {
  return schema ? parseWith(schema, value) : undefined;
}

/** Nothing that a signed-in person gets may be kept by a cache. */
export function toResponse(result: unknown): Response {
  const response =
    result instanceof Response
      ? result
      : result === undefined
        ? new Response(null, { status: 204 })
        : jsonAnswer(result);
  if (!response.headers.has('cache-control')) response.headers.set('cache-control', 'no-store');
  return response;
}
