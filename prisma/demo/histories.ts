import type { DemoClient } from './life.ts';
import { aroha } from './named/aroha.ts';
import { haruto } from './named/haruto.ts';
import { ignacio } from './named/ignacio.ts';
import { leyla } from './named/leyla.ts';
import { mirembe } from './named/mirembe.ts';
import { padraig } from './named/padraig.ts';
import { otherStandings, otherTeam } from './standings.ts';
import { demoStart } from './starts.ts';
import { steadyClimbers } from './steady.ts';

/**
 * The 24 invented clients of the demo, 26 weeks up to yesterday. `today` is a local date `YYYY-MM-DD`; the same date
 * gives the same clients, byte for byte. Rung and ladder ids are the keys of the starter library.
 */
export function demoClients(today: string): DemoClient[] {
  const named = [mirembe, ignacio, haruto, aroha, leyla, padraig].map((client) => client(today));
  return [...named, ...steadyClimbers(today), ...otherStandings(today)].map((client) => ({
    ...client,
    extra: { ...client.extra, start: demoStart(client, today) },
  }));
}

export function otherTeamClients(today: string): DemoClient[] {
  return otherTeam(today);
}
