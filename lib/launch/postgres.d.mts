export function freePort(): Promise<number>;
export function startPostgres(options: {
  folder: string;
  password: string;
  port?: number;
  settings?: string[];
}): Promise<{ url: (database: string) => string; stop: () => void; reused: boolean }>;
