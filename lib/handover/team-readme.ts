/** README.txt of everything of a team. `made` is an ISO instant. */
export function teamReadme(input: { made: string; team: string; clients: number }): string {
  return [
    `Everything of ${input.team}`,
    '',
    `Made ${input.made} (UTC). ${input.clients} clients, those who left too.`,
    '',
    'clients.csv        who is in which folder.',
    'clients/…          a folder a client, and in it the record of this client as a file of its own: it can be handed on,',
    '                   opened or taken into another team without the others. Its README says what is inside.',
    'team/…             what belongs to nobody in particular, a table a file, every column but secrets: skills, parts,',
    '                   ladders, drills, rungs, supports, swaps; settings_versions (the numbers of the checks, each',
    '                   version, whose client_id is set where it is for one client); members, covers, invitations, kept',
    '                   replies and plans, night_runs, record_of_acts (who looked, took out, changed or deleted),',
    '                   deleted_clients (ids and counts, no names).',
    '',
    "Cells that hold lists or nested values are JSON. Instants are UTC. Text that begins like a formula has one ' in front",
    'so that no spreadsheet runs it. Not in here: passwords, sign-in links, sessions, and notes private to coaches.',
    '',
    'These are health data of many people. Keep the file where nobody else can read it, and delete it when it has done its',
    'work.',
    '',
  ].join('\r\n');
}
