/** What fits into a packet or two is not worth compressing: with its length said, the server leaves it as it is. */
const SHORT_BYTES = 1_024;

/** A value as JSON; a short one says its length. */
export function jsonAnswer(value: unknown, status = 200): Response {
  const body = new TextEncoder().encode(JSON.stringify(value));
  const headers = new Headers({ 'content-type': 'application/json' });
  if (body.byteLength < SHORT_BYTES) headers.set('content-length', String(body.byteLength));
  return new Response(body, { status, headers });
}
