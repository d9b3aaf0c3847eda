import type { Fault } from './fault.ts';
import { asleep, clockBack } from './scenarios/clocks.ts';
import { diskFull, poolExhausted } from './scenarios/full.ts';
import {
  killed,
  poison,
  postgresRestarted,
  queueEmptied,
  redisKilled,
  stalled,
  twoWorkers,
} from './scenarios/nights.ts';
import { postgresRestartedAtSubmit, queueDown, twenty, webKilled } from './scenarios/submits.ts';

/** Everything that `npm run test:faults` does, in its order. */
export const FAULTS: readonly Fault[] = [
  killed,
  stalled,
  queueEmptied,
  redisKilled,
  postgresRestarted,
  twoWorkers,
  poison,
  asleep,
  clockBack,
  queueDown,
  postgresRestartedAtSubmit,
  webKilled,
  twenty,
  diskFull,
  poolExhausted,
];
