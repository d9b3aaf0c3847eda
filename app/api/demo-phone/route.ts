import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { demoPhone } from '#lib/schemas/sign-in.ts';
import { makeDemoPhoneLink } from '#lib/usecases/sign-in-demo-phone.ts';

export const POST = defineOpenRoute({ body: demoPhone }, async ({ body, now }) =>
  seeOther(await makeDemoPhoneLink(body.clientId, now)),
);
