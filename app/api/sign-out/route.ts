import { signOut } from '#lib/auth/sign-in.ts';
import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';

/** Ends the session and clears what this browser kept, also check-ins that were not sent yet. */
export const POST = defineOpenRoute({}, async ({ request }) => {
  const headers = await signOut(request);
  headers.set('clear-site-data', '"storage"');
  return seeOther('/sign-in', headers);
});
