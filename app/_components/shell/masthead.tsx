import Link from 'next/link'
import { paths } from '@/lib/addresses'
import type { Actor, OwnCompanyView } from '@/lib/data'
import { ProductMark } from '../ui/product-mark'
import { AccountMenu } from './account-menu'
import { type NavLink, NavLinks } from './nav-links'
import { LengthUnitSwitch } from './switches'

interface MastheadProps {
  readonly actor: Actor | null
  readonly companies: readonly OwnCompanyView[]
}

/** The line at the head of every page: where one can go, in which unit lengths read, who is signed in. */
export function Masthead({ actor, companies }: MastheadProps) {
  return (
    <header className="masthead no-print">
      <div className="masthead-inner">
        <Link href={paths.home()} className="wordmark">
          <ProductMark />
          Bendworthy
        </Link>
        {actor !== null && <NavLinks label="Main" links={listLinks(actor, companies)} />}
        <div className="masthead-end">
          <LengthUnitSwitch />
          {actor !== null && <AccountMenu name={actor.name} />}
        </div>
      </div>
    </header>
  )
}

function listLinks(actor: Actor, companies: readonly OwnCompanyView[]): NavLink[] {
  return [
    { href: paths.home(), label: 'Waiting for me', isExact: true },
    { href: paths.projects(), label: 'Projects' },
    { href: paths.questions(), label: 'Questions' },
    { href: paths.catalogue(), label: 'Catalogue' },
    ...companies.map(({ company, requestCount }) => ({
      href: paths.company(company.id),
      // Of several only their names tell which is which.
      label: companies.length === 1 ? 'Our company' : company.name,
      count: requestCount,
    })),
    ...(actor.isAdmin ? [{ href: paths.workspace(), label: 'Workspace' }] : []),
  ]
}
