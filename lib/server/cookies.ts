import 'server-only'
import { getSettings } from '@/lib/config'

function isSecure(): boolean {
  return getSettings().publicUrl.startsWith('https:')
}

/** RFC 6265bis, 4.1.3: a name that begins so is kept only from TLS. */
export function makeCookieName(name: string): string {
  return isSecure() ? `__Secure-bendworthy-${name}` : `bendworthy-${name}`
}

/** Out of reach of scripts, and not sent with other sites' forms. */
export function cookieOptions() {
  return { httpOnly: true, sameSite: 'lax', path: '/', secure: isSecure() } as const
}
