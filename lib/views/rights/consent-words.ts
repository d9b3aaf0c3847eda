import type { ConsentState } from '#lib/domain/consent.ts';
import { momentAsSaid } from '../phone-dates.ts';

/** How the consent stands, to the client: why the page is shown, or when and by whom it was given. */
export function consentLine(health: ConsentState, coach: string, zone: string, now: Date): string {
  switch (health.state) {
    case 'given':
      return `Given ${momentAsSaid(health.givenAt, zone, now)} by ${health.givenBy}, text of version ${health.textVersion}.`;
    case 'older':
      return `The text has changed since you agreed to version ${health.textVersion}. Read it again: until you agree, nothing new is kept. What is on this phone stays there.`;
    case 'withdrawn':
      return `Taken back ${momentAsSaid(health.at, zone, now)} by ${health.by}. Nothing is checked and no check-in is taken; ${coach} sees that. You can give it again.`;
    case 'none':
      return 'Nothing of your training is kept until you have read this and agreed.';
  }
}

/** The same to a coach, in one line. */
export function consentForCoach(health: ConsentState, share: ConsentState, zone: string, now: Date): string {
  switch (health.state) {
    case 'given':
    case 'older': {
      const older = health.state === 'older' ? ', an earlier text: the phone asks for the new one first' : '';
      const hands = share.state === 'given' || share.state === 'older';
      return `Given ${momentAsSaid(health.givenAt, zone, now)} by ${health.givenBy}, text of version ${health.textVersion}${older}. ${
        hands
          ? 'The record may be handed to the next coach or a clinician.'
          : 'Not asked to be handed on: ask before you hand the record to anybody.'
      }`;
    }
    case 'withdrawn':
      return `Taken back ${momentAsSaid(health.at, zone, now)} by ${health.by}. No checks run and no check-in is taken. What was there stays until deletion is asked for or the years are over.`;
    case 'none':
      return 'Not given yet. The phone asks for it before the first check-in.';
  }
}
