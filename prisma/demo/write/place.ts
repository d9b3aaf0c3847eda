import type { DemoClient } from '../life.ts';

/** What a demo client needs to know of the team it is written into. */
export type Place = {
  coachIds: Record<'lead' | 'second', string>;
  rungIds: ReadonlyMap<string, string>;
  ladderIds: ReadonlyMap<string, string>;
  skillIds: ReadonlyMap<string, string>;
  /** E-mail and password hash of the clients who can also sign in by password. */
  passwords: ReadonlyMap<string, { email: string; hash: string }>;
};

export function idOf(ids: ReadonlyMap<string, string>, key: string): string {
  const id = ids.get(key);
  if (!id) throw new Error(`${key} is not in the team's library`);
  return id;
}

export function coachOf(place: Place, client: DemoClient): string {
  return place.coachIds[client.extra.coach];
}
