import { Fragment } from 'react'
import type { PolicyRowView } from '@/lib/data'

/** A sign-off policy, rule by rule; what is looser than usual says so. */
export function PolicyRows({ rows }: { rows: readonly PolicyRowView[] }) {
  return (
    <dl className="terms">
      {rows.map(({ label, words, isLoosened }) => (
        <Fragment key={label}>
          <dt>{label}</dt>
          <dd>
            {words}
            {isLoosened && <strong> (looser than usual)</strong>}
          </dd>
        </Fragment>
      ))}
    </dl>
  )
}
