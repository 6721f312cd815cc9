'use client'

import { memo } from 'react'
import { type DrawnRef, PLAN_LISTS, type PlanEntry } from '@/lib/plan/edit'
import { useDraft } from '../draft'
import { nameEntry } from './belongs'
import { handleKey } from './keys'
import { LIST_WORDS } from './tools'
import type { PlanEditor } from './use-plan-editor'

/** Longer lists are cut: who drew a thousand holes finds one by pointer, or by its number. */
const MAX_SHOWN = 100

/** All that is drawn, as a list: the truth that the picture shows. Arrow keys move what has the focus. */
export function PlanList({ editor }: { editor: PlanEditor }) {
  const { state } = useDraft()
  const { plan } = editor
  const groups = [
    ...(plan.outline === null ? [] : [{ list: 'outline' as const, entries: [] as readonly PlanEntry[] }]),
    ...PLAN_LISTS.flatMap((list) =>
      plan[list].length === 0 ? [] : [{ list, entries: plan[list] as readonly PlanEntry[] }],
    ),
  ]
  if (groups.length === 0) return <p className="empty">Nothing is drawn yet.</p>
  return (
    <>
      {!editor.isReadOnly && (
        <p className="small muted">
          Arrow keys move what is chosen by the step, with Shift by ten steps. Delete removes it.
        </p>
      )}
      <ul className="plan-list">
        {groups.map(({ list, entries }) => (
          <li key={list}>
            {list === 'outline' ? (
              <Entry editor={editor} refTo={{ list }} name="Outline" />
            ) : (
              <details open={entries.length <= 12}>
                <summary>
                  {LIST_WORDS[list]} <span className="muted">{entries.length}</span>
                </summary>
                <ul>
                  {entries.slice(0, MAX_SHOWN).map((entry) => (
                    <li key={entry.id}>
                      <Entry
                        editor={editor}
                        refTo={{ list, id: entry.id }}
                        name={nameEntry(state.design, list, entry)}
                      />
                    </li>
                  ))}
                  {entries.length > MAX_SHOWN && (
                    <li className="small muted">and {entries.length - MAX_SHOWN} more, found on the drawing</li>
                  )}
                </ul>
              </details>
            )}
          </li>
        ))}
      </ul>
    </>
  )
}

export const isSameRef = (a: DrawnRef, b: DrawnRef): boolean =>
  a.list === b.list && (a.list === 'outline' || b.list === 'outline' || a.id === b.id)

interface EntryProps {
  readonly editor: PlanEditor
  readonly refTo: DrawnRef
  readonly name: string
}

const Entry = memo(function Entry({ editor, refTo, name }: EntryProps) {
  const isChosen = editor.chosen !== null && isSameRef(editor.chosen.ref, refTo)
  return (
    <button
      type="button"
      className="choice"
      aria-current={isChosen ? 'true' : undefined}
      onClick={() => editor.choose({ ref: refTo, point: null })}
      onKeyDown={(event) => handleKey(event, editor, { ref: refTo, point: null }, null)}
    >
      {name}
    </button>
  )
})
