'use client'

import Link from 'next/link'
import { usePathname } from 'next/navigation'
import { isHere, NavChoices, type NavLink } from './nav-links'

export interface NavGroup {
  readonly label: string
  readonly links: readonly NavLink[]
}

/** Links in groups. On a phone only the group of the present page is open; the others lead to their first page. */
export function GroupedNav({ label, groups }: { label: string; groups: readonly NavGroup[] }) {
  const pathname = usePathname()
  return (
    <nav aria-label={label} className="nav-groups">
      {groups.map((group) => {
        const [first] = group.links
        const isOpen = group.links.some((link) => isHere(link, pathname))
        return (
          <div key={group.label} className="nav-group" data-here={isOpen || undefined}>
            <p className="nav-group-head label">
              {first === undefined || isOpen ? group.label : <Link href={first.href}>{group.label}</Link>}
            </p>
            <div className="choices">
              <NavChoices links={group.links} />
            </div>
          </div>
        )
      })}
    </nav>
  )
}
