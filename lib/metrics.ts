import { Counter, collectDefaultMetrics, Histogram, Registry } from 'prom-client';

type Metrics = {
  registry: Registry;
  /** Check-ins that a client sent, by what became of them. */
  submits: Counter<'outcome'>;
  submitSeconds: Histogram;
  /** Answers that were refusals or faults, by their code. */
  refusals: Counter<'code'>;
  /** Jobs that ended, by name and outcome. */
  jobs: Counter<'job' | 'outcome'>;
  jobSeconds: Histogram<'job'>;
  /** Clients that a night checked, or failed to. */
  nightClients: Counter<'outcome'>;
  /** Things of the outbox that were handed over, refused for good, or failed this time. */
  delivered: Counter<'kind' | 'outcome'>;
};

// On globalThis: pages and route handlers are separate module graphs in one process.
const store = globalThis as typeof globalThis & { plumblineMetrics?: Metrics };

/** Counters of this process. Labels are words of ours, never ids or what people wrote. */
export function metrics(): Metrics {
  store.plumblineMetrics ??= makeMetrics();
  return store.plumblineMetrics;
}

function makeMetrics(): Metrics {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  const buckets = [0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30, 100, 300];
  return {
    registry,
    submits: new Counter({
      name: 'plumbline_submits_total',
      help: 'Check-ins sent by clients, by what became of them',
      labelNames: ['outcome'],
      registers,
    }),
    submitSeconds: new Histogram({
      name: 'plumbline_submit_seconds',
      help: 'Time from a check-in to its answer',
      buckets,
      registers,
    }),
    refusals: new Counter({
      name: 'plumbline_refusals_total',
      help: 'Answers of routes that were refusals, by code; failed is a fault of ours',
      labelNames: ['code'],
      registers,
    }),
    jobs: new Counter({
      name: 'plumbline_jobs_total',
      help: 'Jobs that ended, by name and outcome',
      labelNames: ['job', 'outcome'],
      registers,
    }),
    jobSeconds: new Histogram({
      name: 'plumbline_job_seconds',
      help: 'Time of a job, by name; night-batch is one batch of a night',
      labelNames: ['job'],
      buckets,
      registers,
    }),
    nightClients: new Counter({
      name: 'plumbline_night_clients_total',
      help: 'Clients whose night was run, by outcome',
      labelNames: ['outcome'],
      registers,
    }),
    delivered: new Counter({
      name: 'plumbline_outbox_deliveries_total',
      help: 'Tries to hand over what waits in the outbox, by kind and outcome',
      labelNames: ['kind', 'outcome'],
      registers,
    }),
  };
}
