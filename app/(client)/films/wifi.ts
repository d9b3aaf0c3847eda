import { read, write } from '../_phone/storage.ts';

const NAME = 'films:wifi-only';

export function wantsWifiOnly(): boolean {
  return read<boolean>(NAME) === true;
}

export function setWifiOnly(only: boolean): void {
  write(NAME, only);
}

type Connection = { type?: string };

/** What carries the data: known on some phones only. */
export function onWifi(): boolean | 'unknown' {
  const { connection } = navigator as Navigator & { connection?: Connection };
  if (connection?.type === undefined || connection.type === 'unknown') return 'unknown';
  return connection.type === 'wifi' || connection.type === 'ethernet';
}
