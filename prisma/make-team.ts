import { parseArgs } from 'node:util';
import { closeDb } from '#lib/db/client.ts';
import { makeTeam } from '#lib/usecases/make-team.ts';

// npm run make-team -- --team "Low Wall" --name "Ines" --email ines@lowwall.example --zone Europe/Lisbon
// The password is read from PLUMBLINE_FIRST_PASSWORD, so that it stands in no shell history.
const { values } = parseArgs({
  options: {
    team: { type: 'string' },
    name: { type: 'string' },
    email: { type: 'string' },
    zone: { type: 'string', default: 'UTC' },
  },
});
const password = process.env.PLUMBLINE_FIRST_PASSWORD ?? '';
const missing = (['team', 'name', 'email'] as const).filter((key) => !values[key]);
if (missing.length > 0 || password.length < 12) {
  const lines = missing.map((key) => `--${key} is missing`);
  if (password.length < 12) lines.push('PLUMBLINE_FIRST_PASSWORD is missing or shorter than 12 characters');
  process.stderr.write(`${lines.join('\n')}\n`);
  process.exit(1);
}
await makeTeam({
  name: values.team ?? '',
  lead: { name: values.name ?? '', email: values.email ?? '', password, zone: values.zone },
});
process.stdout.write(`Team "${values.team}" is made. ${values.email} signs in with the password given.\n`);
await closeDb();
