import { createECDH, createHmac } from 'node:crypto';
import { env } from '#lib/config/env.ts';

/** The key pair by which push services know this server (RFC 8292): base64url, a point of 65 bytes and a number of 32. */
type VapidKeys = { readonly publicKey: string; readonly privateKey: string };

let cached: VapidKeys | undefined;

/**
 * The settings' pair, else one that follows from PLUMBLINE_SECRET: web and worker, on any machine, must have the same one.
 * With another pair every phone has to be switched on again.
 */
export function vapidKeys(): VapidKeys {
  const { PLUMBLINE_PUSH_PUBLIC: publicKey, PLUMBLINE_PUSH_PRIVATE: privateKey, PLUMBLINE_SECRET } = env();
  cached ??= publicKey && privateKey ? { publicKey, privateKey } : keysOfSecret(PLUMBLINE_SECRET);
  return cached;
}

/** One secret in 4 billion gives no number below the order of the curve; that throws, and another secret is needed. */
function keysOfSecret(secret: string): VapidKeys {
  const curve = createECDH('prime256v1');
  const made = createHmac('sha256', secret).update('web push key').digest();
  curve.setPrivateKey(made);
  return { publicKey: curve.getPublicKey('base64url'), privateKey: made.toString('base64url') };
}
