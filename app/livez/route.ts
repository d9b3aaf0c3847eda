export const dynamic = 'force-dynamic';

/** The process answers. Touches nothing else. */
export function GET(): Response {
  return new Response('live\n', { headers: { 'cache-control': 'no-store' } });
}
