import { z } from 'zod';
import { now } from '#lib/clock.ts';
import { env } from '#lib/config/env.ts';
import { assertOwnOrigin } from './check-origin.ts';
import { clientAddress } from './client-address.ts';
import { type RouteHandler, toResponse } from './define-route.ts';
import { errorResponse } from './error-response.ts';
import { parseWith } from './parse-with.ts';
import { limitRequest, type RequestLimit } from './rate-limit.ts';
import { readBody } from './read-body.ts';

const MAX_BYTES = 8 * 1024;
const nothing = z.unknown();

type Options<Body extends z.ZodType> = {
  readonly body?: Body;
  /** How often one address may do this; behind no trusted proxy, all addresses together. */
  readonly limit?: RequestLimit;
};
type OpenInput<Body> = {
  readonly body: Body;
  readonly request: Request;
  readonly address: string | null;
  readonly now: Date;
};

/** A route for people who are not signed in: own pages only, not too often, parsed; then the handler. */
export function defineOpenRoute<Body extends z.ZodType = typeof nothing>(
  options: Options<Body>,
  handler: (input: OpenInput<z.output<Body>>) => unknown,
): RouteHandler {
  return async (request) => {
    try {
      assertOwnOrigin(request, {
        origin: env().PLUMBLINE_ORIGIN,
        production: env().NODE_ENV === 'production',
      });
      const address = clientAddress(request.headers, env().PLUMBLINE_TRUST_PROXY === '1');
      if (options.limit) await limitRequest(options.limit, address);
      const body = options.body ? parseWith(options.body, await readBody(request, MAX_BYTES)) : undefined;
      return toResponse(await handler({ body: body as z.output<Body>, request, address, now: now() }));
    } catch (error) {
      return errorResponse(error, request);
    }
  };
}
