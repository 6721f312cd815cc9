import { type ReactNode, useId } from 'react'

interface PageSectionProps {
  title: string
  /** Links or buttons at the end of the heading's line. */
  actions?: ReactNode
  id?: string
  children: ReactNode
}

/** A part of a page under a hairline. */
export function PageSection({ title, actions, id, children }: PageSectionProps) {
  const headingId = useId()
  return (
    <section className="section" aria-labelledby={headingId} id={id}>
      <div className="section-head">
        <h2 id={headingId}>{title}</h2>
        {actions !== undefined && <div className="actions row">{actions}</div>}
      </div>
      {children}
    </section>
  )
}

interface PageHeadProps {
  title: string
  /** Small words over the title: where this page belongs. */
  over?: ReactNode
  /** A sentence or two below the title. */
  under?: ReactNode
  actions?: ReactNode
}

export function PageHead({ title, over, under, actions }: PageHeadProps) {
  return (
    <header className="page-head">
      <div>
        {over !== undefined && <p className="label">{over}</p>}
        <h1>{title}</h1>
        {under !== undefined && <div className="muted page-under">{under}</div>}
      </div>
      {actions !== undefined && <div className="row no-print">{actions}</div>}
    </header>
  )
}
