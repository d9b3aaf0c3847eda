import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './steps.mjs';

/** How to sign in to the demo, as the launcher prints it. */
export function DEMO_SIGN_IN_LINES(origin) {
  const { coach } = JSON.parse(readFileSync(join(root, 'lib/library/demo-sign-in.json'), 'utf8'));
  return [
    `Coach:  ${origin}/sign-in  e-mail ${coach.email}  password ${coach.password}`,
    `Client: ${origin}/sign-in  then "Open the phone of a client" (best seen at 360 px)`,
  ];
}
