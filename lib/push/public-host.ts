import { BlockList, isIP } from 'node:net';

/** What IANA's special-purpose registries keep from the public network (RFC 6890 and its additions). */
const NOT_PUBLIC_V4 = [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.88.99.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 3],
] as const;
/** Of version 6 only 2000::/3 is public; without tunnels, whose addresses hide one of version 4, and the examples. */
const TUNNELS_V6 = [
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['3fff::', 20],
] as const;

const refused = new BlockList();
for (const [net, prefix] of NOT_PUBLIC_V4) refused.addSubnet(net, prefix, 'ipv4');
for (const [net, prefix] of TUNNELS_V6) refused.addSubnet(net, prefix, 'ipv6');
const publicV6 = new BlockList();
publicV6.addSubnet('2000::', 3, 'ipv6');

/** Whether an address is one of the public network; false for anything that is no address. */
export function isPublicAddress(address: string): boolean {
  const version = isIP(address);
  if (version === 4) return !refused.check(address, 'ipv4');
  return version === 6 && publicV6.check(address, 'ipv6') && !refused.check(address, 'ipv6');
}

/** Whether the host of a URL may be public: a public address, or a name with a dot. What a name leads to is asked when it is called. */
export function mayBePublicHost(hostname: string): boolean {
  const bare = hostname.replace(/^\[|\]$/g, '');
  if (isIP(bare)) return isPublicAddress(bare);
  return /[^.]\.[^.]/.test(bare) && !/\.(localhost|local|internal|home\.arpa)\.?$/i.test(bare);
}
