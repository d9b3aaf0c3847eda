// Queries of the record about what stands beside check-ins, plans and reasons; $1 the team, $2 the client.

/** ISO 8601 in UTC with milliseconds. */
const iso = (column: string) => `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;

export const CLINICIAN_WORDS = `select c.date, c.region, c.side, c.words, c.review_on as "reviewOn", m.name as by,
  nullif(c.clinician, '') as clinician, c.told, case when c.told is not null then c.lifts end as lifts
  from clinician_word c left join member m on m.team_id = c.team_id and m.id = c.by_id
  where c.team_id = $1 and c.client_id = $2 order by c.date, c.id`;
/** Asked for with the clips that came and were taken; and clips that nobody asked for, as of the moment they came, by nobody. */
export const FILMS = `select ${iso('c.asked_at')} as "askedAt", coalesce(m.name, '') as by, l.name as ladder, r.name as rung, c.side, c.angle,
  c.by_date as "byDate", c.words, ${iso('c.received_at')} as "receivedAt", ${iso('c.looked_at')} as "lookedAt", c.verdict,
  coalesce(c.faults, '{}') as faults from (
    select f.team_id, f.client_id, f.id, f.created_at as asked_at, f.by_id, f.rung_id, f.side, f.angle, f.by_date, f.words,
      k.received_at, k.looked_at, k.verdict, k.faults
    from film_request f left join clip k on k.team_id = f.team_id and k.client_id = f.client_id and k.request_id = f.id
      and k.state in ('checking', 'ready', 'gone')
    where f.taken_back_at is null or k.id is not null
    union all
    select k.team_id, k.client_id, k.id, k.received_at, null, k.rung_id, k.side, coalesce(k.angle, ''), null, '',
      k.received_at, k.looked_at, k.verdict, k.faults
    from clip k where k.request_id is null and k.received_at is not null and k.state in ('checking', 'ready', 'gone')) c
  left join member m on m.team_id = c.team_id and m.id = c.by_id
  join rung r on r.team_id = c.team_id and r.id = c.rung_id join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
  where c.team_id = $1 and c.client_id = $2 order by c.asked_at, c.id, c.received_at`;
export const SEEN = `select ${iso('c.at')} as at, m.name as by, c.check_in_id as "checkInId" from seen_mark c
  join member m on m.team_id = c.team_id and m.id = c.by_id
  where c.team_id = $1 and c.client_id = $2 order by c.at, c.id`;
export const VERDICTS = `select v.reason_id as "reasonId", ${iso('v.at')} as at, m.name as by, v.right_to_tell as "rightToTell", v.text
  from verdict v join reason c on c.team_id = v.team_id and c.id = v.reason_id
  join member m on m.team_id = v.team_id and m.id = v.by_id
  where c.team_id = $1 and c.client_id = $2 and v.undone_at is null order by v.at, v.id`;
export const INTAKE = `select t.key as about, case jsonb_typeof(t.value) when 'string' then t.value #>> '{}' else t.value::text end as told,
  ${iso('c.completed_at')} as "completedAt" from intake c cross join lateral jsonb_each(c.answers) t
  where c.team_id = $1 and c.client_id = $2 order by t.key`;
export const CONSENTS = `select c.kind, c.text_version as "textVersion", ${iso('c.given_at')} as "givenAt",
  ${iso('c.withdrawn_at')} as "withdrawnAt", c.given_by as "givenBy" from consent c
  where c.team_id = $1 and c.client_id = $2 order by c.given_at, c.id`;
export const NOTES = `select ${iso('c.created_at')} as at, m.name as by, c.text from private_note c
  join member m on m.team_id = c.team_id and m.id = c.by_id
  where c.team_id = $1 and c.client_id = $2 order by c.created_at, c.id`;
