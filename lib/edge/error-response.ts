import { randomUUID } from 'node:crypto';
import { AppError, STATUS_OF_CODE } from '#lib/errors.ts';
import { logger } from '#lib/logger.ts';
import { metrics } from '#lib/metrics.ts';
import { serviceTrouble } from './service-trouble.ts';

/**
 * A refusal as people read it; trouble with the database, with how long to wait; anything else as one general sentence
 * with an id that stands in the log.
 */
export function errorResponse(error: unknown, request: Request): Response {
  metrics().refusals.inc({ code: error instanceof AppError ? error.code : 'failed' });
  if (error instanceof AppError) {
    const headers = new Headers({ 'cache-control': 'no-store' });
    if (error.code === 'too-many') headers.set('retry-after', error.fields['retry-after'] ?? '60');
    const { code, message, fields } = error;
    return Response.json({ error: { code, message, fields } }, { status: STATUS_OF_CODE[code], headers });
  }
  const trouble = serviceTrouble(error);
  if (trouble) {
    logger().error({ method: request.method, path: new URL(request.url).pathname, error }, 'out of service');
    const { message, retryAfterSeconds } = trouble;
    return Response.json(
      { error: { code: 'unavailable', message, fields: {} } },
      { status: 503, headers: { 'cache-control': 'no-store', 'retry-after': String(retryAfterSeconds) } },
    );
  }
  const id = randomUUID();
  logger().error(
    { id, method: request.method, path: new URL(request.url).pathname, error },
    'request failed',
  );
  const message = `Something went wrong on our side. Nothing of this request was kept. Try again; if it stays, name ${id}.`;
  return Response.json(
    { error: { code: 'failed', message, fields: {} } },
    { status: 500, headers: { 'cache-control': 'no-store' } },
  );
}
