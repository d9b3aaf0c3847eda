/** The local date whose night is disturbed, and the instant at which the clocks of all programs stand. */
export const NIGHT = '2026-04-03';
/** 05:00 on 5 April in UTC+14, 04:00 on 4 April in UTC-11: everybody owes NIGHT, the first ones the night after it, too. */
export const AT = '2026-04-04T15:00:00.000Z';
/** Three days on. On 5 April the clocks of Santiago and Lord Howe went back. */
export const THREE_DAYS_ON = '2026-04-07T15:00:00.000Z';
