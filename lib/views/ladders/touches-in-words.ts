import type { LadderTouch } from './ladder-touches.ts';

type Asked = { question: string; agree: string; count: (touch: LadderTouch) => string };

/** The question before an edit is kept: "This touches 3 clients. Change it for them?". */
export function touchesInWords(touches: readonly LadderTouch[]): Asked {
  const all = new Set(touches.flatMap((touch) => touch.clients.map((client) => client.clientId)));
  const clients = (count: number) => `${count} client${count === 1 ? '' : 's'}`;
  return {
    question: `This touches ${clients(all.size)}`,
    agree: `Change it for ${all.size === 1 ? 'this client' : `these ${all.size} clients`}`,
    count: (touch) => clients(touch.clients.length),
  };
}
