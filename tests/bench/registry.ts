import { boardBench } from './board/board.bench.ts';
import { boardNightBench } from './board/board-night.bench.ts';
import { checkHistoryBench } from './check-history/check-history.bench.ts';
import { checksBench } from './checks.bench.ts';
import { detectBench } from './detect/detect.bench.ts';
import { forecastBench } from './forecast.bench.ts';
import type { Bench } from './harness.ts';
import { nightBench, nightClientsBench, nightHistoryBench, nightWorkersBench } from './night/night.bench.ts';
import { packBench } from './pack/pack.bench.ts';
import { phoneJsBench } from './phone-js.bench.ts';
import { phoneTimeBench } from './phone-time.bench.ts';
import { replayBench } from './replay.bench.ts';
import { submitBench } from './submit.bench.ts';

export const BENCHES: Bench[] = [
  boardBench,
  boardNightBench,
  checksBench,
  checkHistoryBench,
  detectBench,
  forecastBench,
  nightBench,
  nightHistoryBench,
  nightClientsBench,
  nightWorkersBench,
  packBench,
  phoneJsBench,
  phoneTimeBench,
  replayBench,
  submitBench,
];
