export function appPassword(secret: string): string;
export function appUrl(ownerUrl: string, secret: string): string;
export function ensureDatabase(ownerUrl: string): Promise<void>;
export function dropDatabase(ownerUrl: string): Promise<void>;
export function migrate(ownerUrl: string, secret: string): Promise<string[]>;
