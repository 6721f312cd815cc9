import Link from 'next/link'
import type { Actor } from '@/lib/data'
import { AccountMenu } from './account-menu'
import { type NavLink, NavLinks } from './nav-links'
import { paths } from './paths'
import { LengthUnitSwitch } from './switches'

interface MastheadProps {
  readonly actor: Actor | null
  /** Projects that await an answer of the person's company. */
  readonly companyRequests: number
}

/** The line at the head of every page: where one can go, in which unit lengths read, who is signed in. */
export function Masthead({ actor, companyRequests }: MastheadProps) {
  return (
    <header className="masthead no-print">
      <div className="masthead-inner">
        <Link href={paths.home()} className="wordmark">
          Bendworthy
        </Link>
        {actor !== null && <NavLinks label="Main" links={listLinks(actor, companyRequests)} />}
        <div className="masthead-end">
          <LengthUnitSwitch />
          {actor !== null && <AccountMenu name={actor.name} />}
        </div>
      </div>
    </header>
  )
}

function listLinks(actor: Actor, companyRequests: number): NavLink[] {
  const companyId = actor.companies[0]?.companyId
  return [
    { href: paths.home(), label: 'What waits', isExact: true },
    { href: paths.projects(), label: 'Projects' },
    { href: paths.catalogue(), label: 'Catalogue' },
    ...(companyId === undefined
      ? []
      : [{ href: paths.company(companyId), label: 'Our company', count: companyRequests }]),
    ...(actor.isAdmin ? [{ href: paths.workspace(), label: 'Workspace' }] : []),
  ]
}
