// For programs run by hand beside `npm start`: the addresses and the secret of this checkout, unless they are given.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataFolder } from './steps.mjs';

const file = join(dataFolder, 'environment.json');
if (!process.env.APP_DATABASE_URL && existsSync(file)) {
  for (const [name, value] of Object.entries(JSON.parse(readFileSync(file, 'utf8'))))
    process.env[name] ??= value;
}
