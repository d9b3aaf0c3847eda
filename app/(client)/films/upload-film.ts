import type { KeptFilm } from './kept-film.ts';

export type Told = {
  progress: (sent: number, all: number) => void;
  done: () => void;
  /** `message`: what the server said, where sending again does not help; undefined: no signal, it goes on by itself. */
  stopped: (message: string | undefined) => void;
};

const PIECE_BYTES = 512 * 1024;
const WAITS_MS = [0, 1_000, 3_000, 5_000, 10_000, 20_000, 40_000];

/** Sends a film from where the server has it. The returned function stops; what was sent stays sent. */
export async function uploadFilm(film: KeptFilm, told: Told): Promise<() => void> {
  // Loaded with the first film only: pages stay small.
  const { Upload, DetailedError } = await import('tus-js-client');
  const upload = new Upload(film.file, {
    endpoint: '/api/clips',
    // The id is the phone's own: where nothing is there yet, the protocol begins it.
    uploadUrl: `/api/clips/${film.id}`,
    chunkSize: PIECE_BYTES,
    retryDelays: WAITS_MS,
    metadata: film.about,
    storeFingerprintForResuming: false,
    onProgress: told.progress,
    onSuccess: told.done,
    onError: (error) => {
      const answer = error instanceof DetailedError ? error.originalResponse : null;
      const status = answer?.getStatus() ?? 0;
      const isRefused = status >= 400 && status < 500 && ![401, 409, 423, 428, 429].includes(status);
      told.stopped(isRefused ? messageOf(answer?.getBody() ?? '') : undefined);
    },
  });
  upload.start();
  return () => void upload.abort();
}

function messageOf(body: string): string {
  try {
    const { error } = JSON.parse(body) as { error?: { message?: string } };
    if (error?.message) return error.message;
  } catch {
    // No JSON: the general sentence says what to do.
  }
  return 'The film was not taken. Choose it again.';
}
