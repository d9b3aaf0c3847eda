import type { LadderTouch } from './ladder-touches.ts';

type Asked = {
  question: string;
  agree: string;
  count: (touch: LadderTouch) => string;
  /** From when on it holds, for each kind of touch. */
  since: string[];
};

const SINCE: Record<LadderTouch['kind'], string> = {
  check:
    'It counts from the next check on, also for days already logged. What was logged stays as it was logged.',
  swap: 'The phone offers these swaps from now on. Plans stay as they are.',
  opening: 'The gap finder goes by it from now on. Where clients stand and what is planned stays as it is.',
};

/** The question before an edit is kept: "This touches 3 clients. Change it for them?". */
export function touchesInWords(touches: readonly LadderTouch[]): Asked {
  const all = new Set(touches.flatMap((touch) => touch.clients.map((client) => client.clientId)));
  const clients = (count: number) => `${count} client${count === 1 ? '' : 's'}`;
  return {
    question: `This touches ${clients(all.size)}`,
    agree: `Change it for ${all.size === 1 ? 'this client' : `these ${all.size} clients`}`,
    count: (touch) => clients(touch.clients.length),
    since: [...new Set(touches.map((touch) => SINCE[touch.kind]))],
  };
}
