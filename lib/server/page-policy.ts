import 'server-only'
import { randomBytes } from 'node:crypto'
import { getSettings } from '@/lib/config'

/** The header in which a page's nonce travels from the proxy to what renders the page. */
export const NONCE_HEADER = 'x-nonce'

/** 128 bits, as the specification of content security policies recommends (W3C CSP Level 3, 7.1). */
const NONCE_BYTES = 16

export function makeNonce(): string {
  return randomBytes(NONCE_BYTES).toString('base64')
}

/**
 * What a page may load and run. Everything comes from this server. A script or style sheet that stands in the page itself
 * runs only with the nonce of this one answer, so that injected text stays text. Style attributes are the exception: cells and
 * drawings are placed by them. Workers are files of this origin, or started from a blob that loads one.
 *
 * @param isDevelopment  the development server evaluates text as code, and its overlay brings styles of its own
 */
export function makePagePolicy(nonce: string, isDevelopment: boolean): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}'${isDevelopment ? " 'unsafe-eval'" : ''}`,
    "script-src-attr 'none'",
    isDevelopment ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}

/** A year, as common practice has it: a browser that came by TLS once does not try plain HTTP again (RFC 6797). */
const TRANSPORT_SECURITY = 'max-age=31536000'

/** Only where people reach the server by TLS; a plain address would be locked out of its own browser. */
export function getTransportHeaders(): Readonly<Record<string, string>> {
  return getSettings().publicUrl.startsWith('https:') ? { 'strict-transport-security': TRANSPORT_SECURITY } : {}
}
