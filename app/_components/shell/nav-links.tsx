'use client'

import Link from 'next/link'
import { usePathname } from 'next/navigation'

export interface NavLink {
  href: string
  label: string
  /** Marks the link only on its own address, not on those below it. */
  isExact?: boolean
  /** A small number beside the label, e.g. open threads. */
  count?: number
}

/** Does the link lead to the page that is shown, or to one above it? */
export const isHere = (link: NavLink, pathname: string): boolean =>
  pathname === link.href || (link.isExact !== true && pathname.startsWith(`${link.href}/`))

/** Links of which the one that holds the present page is marked. */
export function NavLinks({ label, links }: { label: string; links: readonly NavLink[] }) {
  return (
    <nav aria-label={label} className="choices">
      <NavChoices links={links} />
    </nav>
  )
}

/** The links themselves, for a list of choices. */
export function NavChoices({ links }: { links: readonly NavLink[] }) {
  const pathname = usePathname()
  return links.map((link) => (
    <Link
      key={link.href}
      href={link.href}
      className="choice"
      aria-current={isHere(link, pathname) ? 'page' : undefined}
    >
      {link.label}
      {link.count !== undefined && link.count > 0 && <span className="count"> {link.count}</span>}
    </Link>
  ))
}
