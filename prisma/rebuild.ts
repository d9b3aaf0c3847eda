import { parseArgs } from 'node:util';
import { listAllTeams } from '#lib/db/all-teams.ts';
import { closeDb, teamScope } from '#lib/db/client.ts';
import { rebuildTeamRollups } from '#lib/usecases/rebuild-rollups.ts';

// npm run -s rebuild [-- --team "Low Wall"]
// Computes the day rollups again from the check-ins and writes those that were wrong, a line each; the sums go to
// standard error. Ends with 0 also when something was mended, with 1 when it could not be done.
const { values } = parseArgs({ options: { team: { type: 'string' } } });
const owner = process.env.DATABASE_URL;
if (!owner) {
  process.stderr.write('DATABASE_URL is missing: the address of the owner of the tables.\n');
  process.exit(1);
}
const teams = (await listAllTeams(owner)).filter(
  ({ name }) => values.team === undefined || name === values.team,
);
if (values.team !== undefined && teams.length === 0) {
  process.stderr.write(`No team is called "${values.team}".\n`);
  process.exit(1);
}
for (const { id, name } of teams) {
  const sum = { clients: 0, days: 0, mended: 0 };
  for await (const { clients, days, mended } of rebuildTeamRollups(teamScope(id))) {
    for (const { clientId, date, what } of mended)
      process.stdout.write(`${id} ${clientId} ${date} ${what}\n`);
    sum.clients += clients;
    sum.days += days;
    sum.mended += mended.length;
  }
  process.stderr.write(`${name}: ${sum.clients} clients, ${sum.days} days, ${sum.mended} mended.\n`);
}
await closeDb();
