import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import { SMTPServer } from 'smtp-server';

type Taken = { from: string; to: string[]; raw: string };
export type MailServer = {
  address: string;
  /** What it answers to a recipient: 250 takes the mail. */
  status: number;
  /** What it answers to the sender. */
  senderStatus: number;
  taken: Taken[];
  /** Runs before a mail that was taken is answered. */
  onTaken: () => Promise<void>;
  tried: number;
  close: () => Promise<void>;
};

/** A mail server on this machine that keeps what it was given. */
export async function openMailServer(): Promise<MailServer> {
  const smtp = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS', 'AUTH'],
    onMailFrom: (_address, _session, answer) =>
      service.senderStatus === 250
        ? answer()
        : answer(Object.assign(new Error('no'), { responseCode: service.senderStatus })),
    onRcptTo: (_address, _session, answer) => {
      service.tried += 1;
      if (service.status === 250) return answer();
      answer(Object.assign(new Error('not taken'), { responseCode: service.status }));
    },
    onData: (stream, { envelope }, answer) => {
      text(stream)
        .then(async (raw) => {
          const from = envelope.mailFrom ? envelope.mailFrom.address : '';
          service.taken.push({ from, to: envelope.rcptTo.map(({ address }) => address), raw });
          await service.onTaken();
        })
        .then(() => answer(), answer);
    },
  });
  await new Promise<void>((done) => {
    smtp.listen(0, '127.0.0.1', () => done());
  });
  const { port } = smtp.server.address() as AddressInfo;
  const service: MailServer = {
    address: `smtp://127.0.0.1:${port}`,
    status: 250,
    senderStatus: 250,
    taken: [],
    onTaken: async () => undefined,
    tried: 0,
    close: () => new Promise((done) => smtp.close(() => done())),
  };
  return service;
}
