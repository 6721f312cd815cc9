import { BRIEF_FIELDS, type Brief, type FieldNode, getFieldInText } from '@/lib/engine'
import { listBriefInputs } from './item-inputs'
import { formatFieldValue } from './trade-words'

/** A field of the brief that an item is about, with what it says. */
export interface StatedInBrief {
  readonly field: keyof Brief
  readonly label: string
  /** Texts in full; empty where nothing is stated. */
  readonly text: string
}

/** What the brief says already about an item, so that nobody is asked for it a second time. */
export function listStatedInBrief(itemId: string, brief: Brief): StatedInBrief[] {
  return listBriefInputs(itemId).map((field) => {
    const value = brief[field]
    const words: FieldNode = BRIEF_FIELDS[field]
    const label = getFieldInText(words)
    const text = typeof value === 'string' && value.includes(' ') ? value : formatFieldValue(value, words)
    return { field, label, text: value === null || value === '' ? '' : text }
  })
}
