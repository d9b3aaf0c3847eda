import { signInByPassword } from '#lib/auth/sign-in.ts';
import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { passwordSignIn } from '#lib/schemas/sign-in.ts';

export const POST = defineOpenRoute({ body: passwordSignIn }, async ({ body, request, address }) =>
  Response.json({ signedIn: true }, { headers: await signInByPassword(body, { request, address }) }),
);
