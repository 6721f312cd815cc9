import type { Metadata, Viewport } from 'next'
import { cookies, headers } from 'next/headers'
import Link from 'next/link'
import type { ReactNode } from 'react'
import { paths } from '@/lib/addresses'
import { listOwnCompanies } from '@/lib/data'
import { CAUTIONS } from '@/lib/engine/cautions'
import { getActor, NONCE_HEADER } from '@/lib/server'
import { Masthead } from './_components/shell/masthead'
import { NavigationStatus } from './_components/shell/navigation-status'
import { PageContents } from './_components/shell/page-contents'
import { StyleNonce } from './_components/shell/style-nonce'
import { ThemeSwitch } from './_components/shell/switches'
import {
  FOIL_UNIT_COOKIE,
  LENGTH_UNIT_COOKIE,
  parseFoilUnitPreference,
  parseLengthUnitPreference,
  parseThemePreference,
  THEME_COOKIE,
} from './_components/ui/preferences'
import { UnitProvider } from './_components/ui/unit-context'
import './globals.css'
import { shippedFont } from './typeface'

export const metadata: Metadata = {
  title: { default: 'Bendworthy', template: '%s · Bendworthy' },
  description: 'Early manufacturability review and sign-off for flexible and rigid-flex circuits.',
}

export const viewport: Viewport = {
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#fcfcfa' },
    { media: '(prefers-color-scheme: dark)', color: '#15181b' },
  ],
}

export default async function RootLayout({ children }: { children: ReactNode }) {
  const [jar, head, actor] = await Promise.all([cookies(), headers(), getActor()])
  const companies = actor === null ? [] : await listOwnCompanies(actor)
  const theme = parseThemePreference(jar.get(THEME_COOKIE)?.value)
  const unit = parseLengthUnitPreference(jar.get(LENGTH_UNIT_COOKIE)?.value)
  const foilUnit = parseFoilUnitPreference(jar.get(FOIL_UNIT_COOKIE)?.value)
  return (
    <html
      lang="en"
      className={shippedFont.variable}
      {...(theme === 'system' ? {} : { 'data-theme': theme })}
      suppressHydrationWarning
    >
      <body>
        <StyleNonce nonce={head.get(NONCE_HEADER) ?? undefined} />
        <a className="skip-link" href="#content">
          Skip to content
        </a>
        <UnitProvider initialUnit={unit} initialFoilUnit={foilUnit}>
          <NavigationStatus />
          <Masthead actor={actor} companies={companies} />
          <main id="content" className="page" tabIndex={-1}>
            {children}
          </main>
          <PageContents />
          <footer className="footer">
            <p>{CAUTIONS.join(' ')}</p>
            <div className="no-print row">
              {actor !== null && <Link href={paths.glossary()}>Glossary</Link>}
              <ThemeSwitch initialTheme={theme} />
            </div>
          </footer>
        </UnitProvider>
      </body>
    </html>
  )
}
