'use client'

import { Button } from '@/app/_components/ui/button'
import { confirmAssumed } from '@/lib/engine'
import { groupBy } from '@/lib/engine/numerics'
import { useDraft, useEdit } from './draft-context'

/** What the design holds that nobody has confirmed, by part, with one act to confirm all of it. */
export function AssumedNotice() {
  const { assumedByPath } = useDraft()
  const edit = useEdit()
  const assumptions = [...assumedByPath.values()]
  if (assumptions.length === 0) return null
  const parts = groupBy(assumptions, ({ list, id }) => `${list} ${id}`)
  const marks = assumptions.map(({ mark }) => mark)
  const count = marks.length
  return (
    <details className="small assumed-notice">
      <summary>
        {count} {count === 1 ? 'value is' : 'values are'} assumed and not confirmed yet
      </summary>
      <p className="muted">
        A starting construction or a new row proposed them. Changing a value confirms it; the review goes on once all
        are confirmed.
      </p>
      <ul>
        {[...parts.entries()].map(([key, own]) => (
          <li key={key}>
            {own[0]?.name}: {own.map(({ label }) => label).join(', ')}
          </li>
        ))}
      </ul>
      <Button onPress={() => edit(`confirm-all-${count}`, (design) => confirmAssumed(design, marks))}>
        Confirm all {count}
      </Button>
    </details>
  )
}
