/** After a form was posted: go and look there. The address is one of our own paths. */
export function seeOther(path: `/${string}`, headers: Headers = new Headers()): Response {
  headers.set('location', path);
  headers.set('cache-control', 'no-store');
  return new Response(null, { status: 303, headers });
}
