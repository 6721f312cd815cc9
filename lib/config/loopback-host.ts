import 'server-only'

/** `localhost`, 127.0.0.0/8 (RFC 1122, 3.2.1.3) and ::1 (RFC 4291, 2.5.3). */
export function isLoopbackHost(host: string): boolean {
  const plain = host.replace(/^\[|\]$/g, '').toLowerCase()
  return plain === 'localhost' || plain === '::1' || /^127\.\d{1,3}\.\d{1,3}\.\d{1,3}$/.test(plain)
}
