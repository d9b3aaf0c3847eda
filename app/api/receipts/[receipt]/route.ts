import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { AppError } from '#lib/errors.ts';
import { receiptAddress } from '#lib/schemas/rights.ts';
import { writeReceipt } from '#lib/usecases/rights/load-receipt.ts';

/** The receipt as a text. Its number is all that is needed: there may be no account any more. */
export const GET = defineOpenRoute({ limit: LIMITS.receipt }, async ({ request }) => {
  const receipt = new URL(request.url).pathname.split('/').at(-1);
  const address = receiptAddress.safeParse({ receipt });
  const text = address.success ? await writeReceipt(address.data.receipt) : undefined;
  if (!address.success || text === undefined)
    throw new AppError('not-found', 'There is no receipt of this number. Check every letter.');
  return new Response(text, {
    headers: {
      'content-type': 'text/plain; charset=utf-8',
      'content-disposition': `attachment; filename="receipt-${address.data.receipt}.txt"`,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    },
  });
});
