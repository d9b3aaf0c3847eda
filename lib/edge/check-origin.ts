import { AppError } from '#lib/errors.ts';

export type OriginRule = { readonly origin: string; readonly production: boolean };

/**
 * Refuses a changing request that another site's page could have sent. A missing Origin is refused as well: every
 * browser sends one with a POST. Outside production the address that was asked for is accepted too.
 */
export function assertOwnOrigin(request: Request, rule: OriginRule): void {
  if (request.method === 'GET' || request.method === 'HEAD') return;
  const given = request.headers.get('origin');
  if (given === new URL(rule.origin).origin) return;
  if (!rule.production && given !== null && hostOf(given) === request.headers.get('host')) return;
  throw new AppError(
    'forbidden',
    'This request did not come from a page of Plumbline. Open the page again and repeat.',
  );
}

function hostOf(origin: string): string | undefined {
  return URL.canParse(origin) ? new URL(origin).host : undefined;
}
