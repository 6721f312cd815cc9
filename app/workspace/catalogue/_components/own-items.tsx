'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { EmptyState } from '@/app/_components/ui/notices'
import { DECIDED_WHEN_WORDS, type OwnItem } from '@/lib/engine/catalogue'
import { ITEM_SECTION_WORDS } from '@/lib/engine/results'
import { AddOwnItemForm, ChangeOwnItemForm, RemoveOwnItemForm } from './own-item-form'

interface OwnItemsProps {
  items: readonly OwnItem[]
  version: number
  mayEdit: boolean
}

type Open = { act: 'add' } | { act: 'change' | 'remove'; itemId: string } | null

/** Questions that the workspace adds to every review: answered by people, with evidence. */
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
              <dt>evidence</dt>
              <dd>{item.evidence}</dd>
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
