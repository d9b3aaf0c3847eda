/** Refusals that an edge must report. The code decides the HTTP status; the message is for people. */
export type ErrorCode =
  | 'invalid' // 400, names the field and the fix
  | 'signed-out' // 401
  | 'forbidden' // 403
  | 'not-found' // 404, also for somebody else's
  | 'conflict' // 409
  | 'consent-needed' // 428, the client's consent comes first; the same again succeeds after it
  | 'too-large' // 413
  | 'too-many' // 429
  | 'unavailable'; // 503

export class AppError extends Error {
  readonly code: ErrorCode;
  /** Field path to message, for forms. */
  readonly fields: Record<string, string>;
  constructor(
    code: ErrorCode,
    message: string,
    options: { fields?: Record<string, string>; cause?: unknown } = {},
  ) {
    super(message, { cause: options.cause });
    this.code = code;
    this.fields = options.fields ?? {};
  }
}

/** One field that is refused: its name and what is wrong, with the fix. */
export function invalidField(name: string, why: string): AppError {
  return new AppError('invalid', `${name}: ${why}`, { fields: { [name]: why } });
}

export const STATUS_OF_CODE: Record<ErrorCode, number> = {
  invalid: 400,
  'signed-out': 401,
  forbidden: 403,
  'not-found': 404,
  conflict: 409,
  'consent-needed': 428,
  'too-large': 413,
  'too-many': 429,
  unavailable: 503,
};
