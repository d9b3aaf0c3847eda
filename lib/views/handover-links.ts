import type { ConsentState } from '#lib/domain/consent.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { momentAsSaid } from './phone-dates.ts';
import { exactDate } from './say-date.ts';

type Link = {
  end: 'ended' | 'consent' | 'deletion' | 'codes' | 'over' | null;
  createdAt: Date;
  expiresAt: Date;
  revokedAt: Date | null;
  openings: number;
  lastOpenedAt: Date | null;
  wrongCodes: number;
};

/** How a link to a record stands, in words; `zone`: the client's. */
export function linkState(link: Link, zone: string, now: Date): string {
  const said = (at: Date) => momentAsSaid(at, zone, now);
  switch (link.end) {
    case null:
      return `open until ${exactDate(localDateOf(link.expiresAt, zone))}`;
    case 'ended':
      return `ended ${said(link.revokedAt ?? now)}`;
    case 'consent':
      return 'ended: a consent was taken back';
    case 'deletion':
      return 'ended: deletion of the record was asked for';
    case 'codes':
      return 'closed: five codes did not fit';
    case 'over':
      return `over since ${said(link.expiresAt)}`;
  }
}

/** How often it was opened, and codes that did not fit. */
export function linkOpenings(link: Link, zone: string, now: Date): string {
  const times = link.openings === 1 ? 'opened once' : `opened ${link.openings} times`;
  const last = link.lastOpenedAt ? `, last ${momentAsSaid(link.lastOpenedAt, zone, now)}` : '';
  const opened = link.openings === 0 ? 'not opened yet' : `${times}${last}`;
  if (link.wrongCodes === 0) return opened;
  return `${opened}; ${link.wrongCodes === 1 ? '1 code' : `${link.wrongCodes} codes`} did not fit`;
}

/** Whether the client agreed that the record is handed on, said above the form. */
export function shareLine(name: string, share: ConsentState, zone: string, now: Date): string {
  if (share.state === 'given' || share.state === 'older')
    return `${name} agreed on ${momentAsSaid(share.givenAt, zone, now)} that the record may be handed to the next coach or a clinician.`;
  if (share.state === 'withdrawn')
    return `${name} took back ${momentAsSaid(share.at, zone, now)} that the record may be handed on. Ask before you make a link.`;
  return `${name} was not asked yet whether the record may be handed on. Ask before you make a link, and write down what was said under why.`;
}
