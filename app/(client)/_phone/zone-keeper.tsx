'use client';
import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import { phoneZone } from './phone-zone.ts';
import { postJson } from './post-json.ts';

/** Tells the server when this phone is in another zone than it knows, then shows the day of here. Shows nothing. */
export function ZoneKeeper({ zone }: { zone: string }) {
  const router = useRouter();
  useEffect(() => {
    const here = phoneZone();
    if (!here || here === zone) return;
    void postJson('/api/zone', { zone: here }).then((failed) => failed === null && router.refresh());
  }, [zone, router]);
  return null;
}
