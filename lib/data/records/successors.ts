import 'server-only'
import type { Design } from '@/lib/engine'
import { findPresentItemId } from '@/lib/engine/catalogue'

interface AnswerRow {
  readonly itemId: string
  readonly state: string
  readonly answeredAt: Date
  readonly version: number
}

/** An answer under the id of today, with the id under which it was given. */
export type PassedAnswer<T extends AnswerRow> = T & { readonly askedItemId: string }

/**
 * Stored answers under the ids of today: one for each item. An answer that was given to the item itself goes first; of those that pass to a successor a
 * concern, then the newest. A passed answer has version 0: nobody has answered the successor yet.
 */
export function passAnswersOn<T extends AnswerRow & { readonly askedItemId?: string }>(
  rows: readonly T[],
  design?: Design,
): PassedAnswer<T>[] {
  const chosen = new Map<string, PassedAnswer<T>>()
  for (const row of rows) {
    const itemId = findPresentItemId(row.itemId, design)
    const passed = {
      ...row,
      itemId,
      askedItemId: row.askedItemId ?? row.itemId,
      version: itemId === row.itemId ? row.version : 0,
    }
    const other = chosen.get(itemId)
    if (
      other === undefined ||
      rank(passed) > rank(other) ||
      (rank(passed) === rank(other) && passed.answeredAt > other.answeredAt)
    ) {
      chosen.set(itemId, passed)
    }
  }
  return [...chosen.values()]
}

function rank({ itemId, askedItemId, state }: { itemId: string; askedItemId: string; state: string }): number {
  if (itemId === askedItemId) return 2
  return state === 'concern' ? 1 : 0
}

/** The same for what hangs on an item without answering it: waivers, files. */
export function passOn<T extends { readonly itemId: string | null }>(rows: readonly T[], design?: Design): T[] {
  return rows.map((row) => (row.itemId === null ? row : { ...row, itemId: findPresentItemId(row.itemId, design) }))
}

/** Threads keep the label that they were opened under. */
export function passAnchorsOn<T extends { readonly anchorKind: string; readonly anchorId: string }>(
  rows: readonly T[],
): T[] {
  return rows.map((row) => (row.anchorKind === 'item' ? { ...row, anchorId: findPresentItemId(row.anchorId) } : row))
}
