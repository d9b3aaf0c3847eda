import { isSign, type StartNews, type ToldAtStart, toldInWords } from '#lib/domain/intake/told-at-start.ts';
import { asSentence } from '#lib/domain/labels.ts';

const SHOWN = 4;

/** Lines at the head of a coach's board about own clients whose start waits for something: at most a few, then a count. */
export function startLines(news: readonly StartNews[]): { words: string; href: string | null }[] {
  const lines = news.flatMap(({ clientId, name, told, guardian, sentAt }) => {
    const words = [
      heldInWords(told as ToldAtStart[]),
      guardian ? 'under 18, waits for the yes of a parent or guardian' : '',
      sentAt ? 'answers of the start have come' : '',
    ].filter(Boolean);
    return { words: `${name}: ${words.join('; ')}`, href: `/clients/${clientId}/intake` };
  });
  const more = lines.length - SHOWN;
  if (more <= 0) return lines;
  return [
    ...lines.slice(0, SHOWN),
    { words: `and ${more} more whose start waits for something, on their pages`, href: '/clients' },
  ];
}

/** The same on the client's page, as a sentence; empty: nothing waits. */
export function waitsInWords(waits: { name: string; told: readonly string[]; agree: boolean }): string {
  const lines = [
    asSentence(heldInWords(waits.told as ToldAtStart[])),
    waits.agree
      ? ''
      : `${waits.name} is under 18, and no parent or guardian agrees yet: training does not begin`,
  ].filter(Boolean);
  return lines.map((line) => `${line}.`).join(' ');
}

/** "the plan is held until a clinician’s word (chest pain)". Empty: nothing is held. */
export function heldInWords(told: readonly ToldAtStart[]): string {
  if (told.length === 0) return '';
  const what = told.some(isSign) ? 'the plan is' : 'upside-down work is';
  return `${what} held until a clinician’s word (${told.map(toldInWords).join(', ')})`;
}
