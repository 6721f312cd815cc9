'use client'

import { Button } from './_components/ui/button'
import { PageHead } from './_components/ui/section'

/** A page that could not be shown. The reference finds the cause in the server's log. */
export default function PageError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  const isBusy = error.digest === 'too-many-pages'
  return (
    <>
      <PageHead
        title={isBusy ? 'Too many pages at once' : 'This page could not be shown'}
        under={
          isBusy
            ? 'This server is still working on pages that you or others requested. Try again in half a minute.'
            : 'Nothing that you entered on other pages is lost. Try again; if it fails again, tell the administrator of this installation.'
        }
      />
      {error.digest !== undefined && !isBusy && (
        <p className="muted">
          Reference: <code>{error.digest}</code>
        </p>
      )}
      <div className="row above-wide">
        <Button weight="strong" onPress={reset}>
          Try again
        </Button>
      </div>
    </>
  )
}
