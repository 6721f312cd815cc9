import { type Brief, type FieldNode, findFieldWords, getFieldInText } from '@/lib/engine'
import { listBriefInputs } from './item-inputs'
import { formatFieldValue } from './trade-words'

/** A field of the brief that an item is about, with what it says. */
export interface StatedInBrief {
  /** Its place below the brief: `packingAndHandling`, `assembly.solderPeakDegC`. */
  readonly field: string
  readonly label: string
  /** Texts in full; empty where nothing is stated. */
  readonly text: string
}

/** What the brief says already about an item, terms included, so that nobody is asked for it a second time. */
export function listStatedInBrief(itemId: string, brief: Brief): StatedInBrief[] {
  return listBriefInputs(itemId).flatMap((path) => {
    const record = findFieldWords(['brief', ...path]).node
    return record?.fields === undefined
      ? [readField(path, brief)]
      : Object.keys(record.fields).map((field) => readField([...path, field], brief))
  })
}

function readField(path: readonly string[], brief: Brief): StatedInBrief {
  const value = path.reduce<unknown>((holder, key) => (holder as Readonly<Record<string, unknown>>)[key], brief)
  const node: FieldNode = findFieldWords(['brief', ...path]).node ?? { label: path.at(-1) ?? '' }
  const record = path.length > 1 ? findFieldWords(['brief', ...path.slice(0, -1)]).node : null
  // A record with words of its own within a sentence begins the label: "tolerance of the outline".
  const label = [record?.inText ?? '', getFieldInText(node)].filter((part) => part !== '').join(' ')
  const isOpen = value === null || value === '' || (Array.isArray(value) && value.length === 0)
  const text = isOpen ? '' : typeof value === 'string' && value.includes(' ') ? value : formatFieldValue(value, node)
  return { field: path.join('.'), label, text }
}
