'use client'

import './globals.css'
import { shippedFont } from './typeface'

/** Stands in for the whole document when even the frame of the page fails. */
export default function GlobalError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <html lang="en" className={shippedFont.variable}>
      <body>
        <main className="page">
          <h1>The application could not answer</h1>
          <p>Nothing was changed. Try again in a moment.</p>
          {error.digest !== undefined && (
            <p className="muted">
              Reference: <code>{error.digest}</code>
            </p>
          )}
          <button type="button" className="button" onClick={reset}>
            Try again
          </button>
        </main>
      </body>
    </html>
  )
}
