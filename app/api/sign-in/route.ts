import { signInByPassword } from '#lib/auth/sign-in.ts';
import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { AppError } from '#lib/errors.ts';
import { passwordSignIn } from '#lib/schemas/sign-in.ts';

/** The sign-in form where scripts do not run. */
export const POST = defineOpenRoute({ body: passwordSignIn }, async ({ body, request, address }) => {
  try {
    return seeOther('/', await signInByPassword(body, { request, address }));
  } catch (error) {
    if (error instanceof AppError)
      return seeOther(error.code === 'too-many' ? '/sign-in?say=wait' : '/sign-in?say=wrong');
    throw error;
  }
});
