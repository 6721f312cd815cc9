'use client'

import { useState } from 'react'

/**
 * Lets the components' library put its few style rules into the page: it looks for the nonce here. The document keeps the
 * policy that it came with, so the first nonce stays, whatever later answers of the server bring.
 */
export function StyleNonce({ nonce }: { nonce: string | undefined }) {
  const [first] = useState(nonce)
  // The browser hides a nonce from anyone who reads attributes, so what is there never equals what was sent.
  return <meta property="csp-nonce" nonce={first} suppressHydrationWarning />
}
