'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { EmptyState } from '@/app/_components/ui/notices'
import { findFieldPattern } from '@/lib/engine'
import { DECIDED_WHEN_WORDS, type OwnCheck, type OwnItem } from '@/lib/engine/catalogue'
import { ITEM_SECTION_WORDS } from '@/lib/engine/results'
import { inSentence } from '@/lib/engine/units'
import { AddOwnItemForm, ChangeOwnItemForm, RemoveOwnItemForm } from './own-item-form'

interface OwnItemsProps {
  items: readonly OwnItem[]
  version: number
  mayEdit: boolean
}

function describeCheck({ field, where, sense, value, upperValue }: OwnCheck): string {
  const found = findFieldPattern(field)
  const unit = found?.node.unit
  const limit =
    sense === 'within'
      ? `${inSentence(value)} to ${inSentence(upperValue ?? value, unit)}`
      : `${sense === 'at-least' ? 'at least' : 'at most'} ${inSentence(value, unit)}`
  return `${found?.label ?? field}${where === null ? '' : ` (where ${where.field} is ${where.value})`}: ${limit}`
}

type Open = { act: 'add' } | { act: 'change' | 'remove'; itemId: string } | null

/** What the workspace adds to every review: questions for people, and fields that are compared with a limit. */
export function OwnItems({ items, version, mayEdit }: OwnItemsProps) {
  const [open, setOpen] = useState<Open>(null)
  const close = () => setOpen(null)
  return (
    <div className="stack">
      {items.length === 0 && <EmptyState>The workspace has no items of its own yet.</EmptyState>}
      {items.map((item) => (
        <article className="catalogue-entry" key={item.id} id={item.id}>
          <div>
            <h3>{item.question}</h3>
            <p className="small muted">
              <code>{item.id}</code>
            </p>
            <p className="small muted">
              {ITEM_SECTION_WORDS[item.section]}, {item.severity}, decided in {DECIDED_WHEN_WORDS[item.decidedWhen]}
            </p>
          </div>
          <div className="stack">
            <p>{item.why}</p>
            <dl className="terms">
              <dt>how to check</dt>
              <dd>{item.howToCheck}</dd>
              {item.check === undefined ? (
                <>
                  <dt>evidence</dt>
                  <dd>{item.evidence}</dd>
                </>
              ) : (
                <>
                  <dt>compared</dt>
                  <dd>{describeCheck(item.check)}</dd>
                </>
              )}
              {item.onlyWithProfile === true && (
                <>
                  <dt>asked</dt>
                  <dd>only with a profile</dd>
                </>
              )}
              <dt>answered by</dt>
              <dd>{item.answeredBy.join(', ')}</dd>
              <dt>ground</dt>
              <dd>{item.ground}</dd>
            </dl>
            {mayEdit && open === null && (
              <div className="row no-print">
                <Button
                  weight="quiet"
                  aria-label={`Change: ${item.question}`}
                  onPress={() => setOpen({ act: 'change', itemId: item.id })}
                >
                  Change
                </Button>
                <Button
                  weight="quiet"
                  aria-label={`Remove: ${item.question}`}
                  onPress={() => setOpen({ act: 'remove', itemId: item.id })}
                >
                  Remove
                </Button>
              </div>
            )}
            {open?.act === 'change' && open.itemId === item.id && (
              <ChangeOwnItemForm item={item} version={version} onClose={close} />
            )}
            {open?.act === 'remove' && open.itemId === item.id && (
              <RemoveOwnItemForm item={item} version={version} onClose={close} />
            )}
          </div>
        </article>
      ))}
      {mayEdit && open === null && (
        <div className="no-print">
          <Button onPress={() => setOpen({ act: 'add' })}>Add an item</Button>
        </div>
      )}
      {open?.act === 'add' && <AddOwnItemForm version={version} onClose={close} />}
    </div>
  )
}
