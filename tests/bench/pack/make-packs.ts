import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Actor } from '#lib/auth/actor.ts';
import { closeDb, teamScope } from '#lib/db/client.ts';
import { PACK_PARTS } from '#lib/handover/pack-content.ts';
import { makePack } from '#lib/usecases/handover/make-pack.ts';

// A process of its own: makes as many packs of one client at once as it is told, and says what that took.
const [teamId = '', memberId = '', clientId = '', count = '1'] = process.argv.slice(2);
const actor: Actor = {
  scope: teamScope(teamId),
  userId: memberId,
  role: 'lead',
  memberId,
  clientId: null,
  name: 'Lead',
  teamName: 'Bench',
};
const options = {
  period: { from: null, to: null },
  parts: PACK_PARTS,
  paper: 'A4' as const,
  words: { why: '', forWhom: '', summary: null, next: null, manner: null },
};
const nowhere = () => new Writable({ write: (_chunk, _encoding, done) => done() });

const started = performance.now();
const busy = process.cpuUsage();
const sizes = await Promise.all(
  Array.from({ length: Number(count) }, async () => {
    const { bytes, zip } = await makePack(actor, { clientId, options }, new Date());
    await pipeline(zip, nowhere());
    return bytes;
  }),
);
const seconds = (performance.now() - started) / 1000;
const { user, system } = process.cpuUsage(busy);
await closeDb();
process.stdout.write(
  JSON.stringify({
    seconds,
    cpuSeconds: (user + system) / 1e6,
    peakMb: process.resourceUsage().maxRSS / 1024,
    bytes: sizes[0] ?? 0,
  }),
);
