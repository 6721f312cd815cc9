import { AppRouterContext, type AppRouterInstance } from 'next/dist/shared/lib/app-router-context.shared-runtime'
import { PathnameContext } from 'next/dist/shared/lib/hooks-client-context.shared-runtime'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { DraftHolder } from '@/app/_components/engineering/draft/draft-holder'

const stays = () => {}
const router: AppRouterInstance = {
  back: stays,
  bfcacheId: 'screen',
  forward: stays,
  prefetch: stays,
  push: stays,
  refresh: stays,
  replace: stays,
}

/**
 * Markup of a screen that stands at `/` and goes nowhere, in the frame of the pages that edit a design. The router comes as a page's does, by its context: test files share their
 * modules, and a mock does not reach a screen that another file loaded.
 */
export function renderScreen(screen: ReactNode): string {
  return renderToString(
    <AppRouterContext.Provider value={router}>
      <PathnameContext.Provider value="/">
        <DraftHolder>{screen}</DraftHolder>
      </PathnameContext.Provider>
    </AppRouterContext.Provider>,
  )
}
