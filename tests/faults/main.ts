import { availableParallelism, cpus } from 'node:os';
import { parseArgs } from 'node:util';
import { findRedis } from '#lib/launch/tools.mjs';
import { FAULTS } from './registry.ts';
import { type Row, runFaults } from './run-faults.ts';

// npm run test:faults -- [--only NAME[,NAME]] [--on postgres|redis] [--clients 2000] [--kills 50] [--seed 1]
const { values } = parseArgs({
  options: {
    only: { type: 'string' },
    on: { type: 'string' },
    clients: { type: 'string', default: '2000' },
    kills: { type: 'string', default: '50' },
    seed: { type: 'string', default: '1' },
    help: { type: 'boolean' },
  },
});
const wanted = values.only?.split(',');
const unknown = (wanted ?? []).filter((name) => !FAULTS.some((fault) => fault.name === name));
const sizes = { clients: Number(values.clients), kills: Number(values.kills) };
const seed = Number(values.seed);
const isWrong =
  unknown.length > 0 || !(sizes.clients >= 20) || !(sizes.kills >= 1) || !Number.isInteger(seed);
if (values.help || isWrong) {
  const known = FAULTS.map((fault) => `  ${fault.name.padEnd(20)} ${fault.what}`).join('\n');
  const complaint = unknown.length > 0 ? `No fault is called ${unknown.join(', ')}.\n` : '';
  process.stdout.write(
    `${complaint}Use: npm run test:faults -- [--only NAME,NAME] [--on postgres|redis] [--clients 2000] [--kills 50] [--seed 1]\n(20 clients and 1 kill at least)\n${known}\n`,
  );
  process.exit(isWrong ? 2 : 0);
}

const line = ({ name, kind, seconds, failure, seen }: Row) =>
  `${failure === null ? 'as undisturbed' : 'FAILED        '}  ${name.padEnd(20)} ${kind.padEnd(9)} ${seconds.toFixed(1).padStart(6)} s  ${failure === null ? seen : `${failure}\n${seen}`}\n`;
const began = Date.now();
const redisServer = findRedis();
if (!redisServer) process.stdout.write('No Redis can be had here: the faults of its half do not run.\n');
const rows = await runFaults({
  faults: FAULTS.filter((fault) => wanted?.includes(fault.name) ?? true).map((fault) =>
    values.on ? { ...fault, kinds: fault.kinds.filter((kind) => kind === values.on) } : fault,
  ),
  sizes,
  seed,
  redisServer,
  said: (row) => process.stdout.write(line(row)),
});
const failed = rows.filter((row) => row.failure !== null);
process.stdout.write(
  `\n${rows.length - failed.length} of ${rows.length} as undisturbed; ${sizes.clients} clients, ${sizes.kills} kills, seed ${seed}, ${((Date.now() - began) / 1000).toFixed(0)} s; ${availableParallelism()} x ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.versions.node}\n`,
);
process.exit(failed.length > 0 || rows.length === 0 ? 1 : 0);
