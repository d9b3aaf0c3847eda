/** A line of a plan as JSON; `i` is the line, `s` its session, `o` the line it is paired with. */
export const PLAN_ITEM_JSON = `json_build_object('session', s.label, 'rungId', i.rung_id, 'side', i.side, 'sets', i.sets,
  'target', i.target, 'minutes', i.minutes, 'timesPerWeek', i.times_per_week, 'support', i.support,
  'stopRule', i.stop_rule, 'notTwoDaysRunning', i.not_two_days_running, 'pairedWith', o.rung_id,
  'noKitRungId', i.no_kit_rung_id) order by s.position, s.label, i.position`;
export const PLAN_ITEM_FROM = `plan_session s join plan_item i on i.team_id = s.team_id and i.session_id = s.id
  left join plan_item o on o.team_id = i.team_id and o.id = i.paired_with_id`;
/** A session of a plan as JSON; `s` is the session. */
export const PLAN_SESSION_JSON = `json_build_object('label', s.label, 'restSeconds', s.rest_seconds, 'warmUp', s.warm_up,
  'warmUpMinutes', coalesce(s.warm_up_minutes, 0), 'minutes', s.minutes) order by s.position, s.label`;
