import { now } from '#lib/clock.ts';
import { closeDb } from '#lib/db/client.ts';
import { DEMO_SIGN_IN } from '#lib/library/demo-sign-in.ts';
import { seedDemo } from './demo/seed.ts';

const say = (line: string) => process.stdout.write(`${line}\n`);

try {
  const started = performance.now();
  const seeded = await seedDemo({ now: now() });
  if (seeded) {
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    say(
      `Demo team Low Wall: ${seeded.clients} clients, ${seeded.checkIns} check-ins, ${seeded.nights} client nights, in ${seconds} s.`,
    );
    say(`Sign in: ${DEMO_SIGN_IN.coach.email}, password ${DEMO_SIGN_IN.coach.password}`);
  } else {
    say('Somebody can sign in already: the demo is for an empty database and was left out.');
  }
} finally {
  await closeDb();
}
