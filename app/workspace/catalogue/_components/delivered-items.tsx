'use client'

import { useMemo, useState } from 'react'
import type { ItemText } from '@/app/_components/review/item-text'
import { Button } from '@/app/_components/ui/button'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { TextField } from '@/app/_components/ui/text-field'
import type { ItemChange } from '@/lib/engine/catalogue'
import { ITEM_SECTION_WORDS } from '@/lib/engine/results'
import { countOf } from '@/lib/engine/units'
import { DeliveredItemForm } from './delivered-item-form'

interface DeliveredItemsProps {
  items: readonly ItemText[]
  changes: readonly ItemChange[]
  version: number
  mayEdit: boolean
}

const SHOWN = [
  { value: 'all', label: 'All' },
  { value: 'changed', label: 'Changed or switched off' },
] as const

/** What was delivered, and what the workspace makes of it. */
export function DeliveredItems({ items, changes, version, mayEdit }: DeliveredItemsProps) {
  const [words, setWords] = useState('')
  const [which, setWhich] = useState<(typeof SHOWN)[number]['value']>('all')
  const [editedId, setEditedId] = useState<string | null>(null)
  const changeOf = useMemo(() => new Map(changes.map((change) => [change.itemId, change])), [changes])
  const wanted = words.trim().toLowerCase()
  const shown = items.filter((item) => {
    if (which === 'changed' && !changeOf.has(item.id)) return false
    return wanted === '' || `${item.id} ${item.question} ${item.why}`.toLowerCase().includes(wanted)
  })
  const columns = {
    item: { head: 'Item', isRowHead: true, className: 'font-normal' },
    section: { head: 'Section', className: 'small' },
    answeredBy: { head: 'Answered by', className: 'small' },
    here: { head: 'In this workspace', className: 'small' },
    ...(mayEdit ? { acts: { head: 'Acts', isHeadHidden: true } } : {}),
  } satisfies Columns
  return (
    <>
      <div className="row filters no-print">
        <ChoiceGroup label="Which delivered items" options={SHOWN} value={which} onChange={setWhich} />
        <TextField label="Find in delivered items" type="search" value={words} onChange={setWords} />
        <span role="status" className="muted small">
          {countOf(shown.length, 'item')}
        </span>
      </div>
      {shown.length === 0 ? (
        <EmptyState>No delivered item matches this filter.</EmptyState>
      ) : (
        <DataTable label="Delivered items" columns={columns}>
          {shown.map((item) => {
            const change = changeOf.get(item.id)
            return (
              <DataRow
                key={item.id}
                data-quiet={change?.isOff || undefined}
                columns={columns}
                cells={{
                  item: (
                    <>
                      {change?.question ?? item.question}
                      {editedId === item.id && (
                        <DeliveredItemForm
                          item={item}
                          change={change ?? null}
                          version={version}
                          onClose={() => setEditedId(null)}
                        />
                      )}
                    </>
                  ),
                  section: ITEM_SECTION_WORDS[item.section],
                  answeredBy: (change?.answeredBy ?? item.answeredBy).join(', '),
                  here:
                    change === undefined ? (
                      <span className="muted">as delivered</span>
                    ) : (
                      <>
                        <strong>{change.isOff ? 'switched off' : 'changed'}</strong>
                        <span className="block muted">{change.reason}</span>
                      </>
                    ),
                  acts: editedId !== item.id && (
                    <Button weight="quiet" aria-label={`Change: ${item.question}`} onPress={() => setEditedId(item.id)}>
                      Change
                    </Button>
                  ),
                }}
              />
            )
          })}
        </DataTable>
      )}
    </>
  )
}
