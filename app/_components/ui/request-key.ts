/** A key that marks one request: its retries carry the same one. `randomUUID` exists in secure contexts only. */
export function makeRequestKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
