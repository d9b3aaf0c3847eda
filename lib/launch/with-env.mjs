// For programs run by hand: what is not given is taken from the checkout that `npm start` serves; of a server of one's own
// (compose) the application's address follows from the owner's and the secret, as for its pages and workers.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { appUrl } from './migrate.mjs';
import { dataFolder } from './steps.mjs';

const file = join(dataFolder, 'environment.json');
const { env } = process;
if (!env.APP_DATABASE_URL && env.DATABASE_URL && env.PLUMBLINE_SECRET)
  env.APP_DATABASE_URL = appUrl(env.DATABASE_URL, env.PLUMBLINE_SECRET);
else if (!env.APP_DATABASE_URL && existsSync(file)) {
  for (const [name, value] of Object.entries(JSON.parse(readFileSync(file, 'utf8')))) env[name] ??= value;
}
