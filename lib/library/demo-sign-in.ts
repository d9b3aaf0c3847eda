import signIn from './demo-sign-in.json' with { type: 'json' };

/** How to sign in to the invented demo team; all names are invented. */
export const DEMO_SIGN_IN = signIn;
