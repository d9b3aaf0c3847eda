import { longDate } from '../say-date.ts';

type News = { clientId: string; name: string; withdrawnAt: Date | null; deletedOn: Date | null };

/** Lines at the head of a coach's board about own clients who took their consent back or asked to be deleted. */
export function rightsLines(news: readonly News[]): { words: string; href: string }[] {
  return news.map(({ clientId, name, withdrawnAt, deletedOn }) => ({
    words: deletedOn
      ? `${name} asked to be deleted: it is done on ${longDate(deletedOn.toISOString().slice(0, 10))}`
      : `${name} took their consent back${withdrawnAt ? ` on ${longDate(withdrawnAt.toISOString().slice(0, 10))}` : ''}: no checks, no check-ins`,
    href: `/clients/${clientId}/rights`,
  }));
}
