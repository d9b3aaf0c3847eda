import { expect, it } from 'vitest';
import { isPublicAddress, mayBePublicHost } from '#lib/push/public-host.ts';

it.each([
  '127.0.0.1',
  '10.1.2.3',
  '172.31.0.9',
  '192.168.1.1',
  '169.254.169.254',
  '100.64.0.1',
  '0.0.0.0',
  '224.0.0.1',
  '255.255.255.255',
  '::1',
  '::',
  'fe80::1',
  'fd00::1',
  '::ffff:10.0.0.1',
  '::ffff:8.8.8.8',
  '64:ff9b::a00:1',
  '2002:a00:1::',
  '2001:0:a00:1::',
  '2001:db8::1',
  'push.example',
  '',
])('%s is not an address of the public network', (address) => {
  expect(isPublicAddress(address)).toBe(false);
});

it.each(['8.8.8.8', '172.32.0.1', '100.128.0.1', '2600:1901::1', '2a00:1450:4001::5'])(
  '%s is one',
  (address) => {
    expect(isPublicAddress(address)).toBe(true);
  },
);

it.each([
  'localhost',
  'db',
  'db.',
  'printer.local',
  'a.localhost',
  'metadata.internal',
  'metadata.internal.',
  '10.0.0.1',
  '[::1]',
  '[fd00::1]',
])('a host %s may not be public', (host) => {
  expect(mayBePublicHost(host)).toBe(false);
});

it.each(['push.example', 'fcm.push.example.', '8.8.8.8', '[2600:1901::1]'])('a host %s may be', (host) => {
  expect(mayBePublicHost(host)).toBe(true);
});
