import { type Design, FEATURE_FIELDS, type FieldNode, getChoiceWord } from '@/lib/engine'
import { asEntered } from '@/lib/engine/units'
import { formatObserved, type SheetWords } from './words'

type Note = { readonly id: string; readonly text: string }

/** What is agreed for rigid edges, shields, the cut of the outline and pairs that need registration: each only where it is stated. */
export function makeEdgeNotes({ features }: Design, words: SheetWords): Note[] {
  const { rigidEdges, shieldGround, outlineCutBy, registrations } = features
  const cut =
    outlineCutBy === null
      ? []
      : [
          {
            id: 'outline-cut',
            text: `${FEATURE_FIELDS.outlineCutBy.label} ${getChoiceWord(FEATURE_FIELDS.outlineCutBy, outlineCutBy)}.`,
          },
        ]
  return [
    ...makeRecordNote('rigid-edges', rigidEdges, FEATURE_FIELDS.rigidEdges, words),
    ...makeRecordNote('shield-ground', shieldGround, FEATURE_FIELDS.shieldGround, words),
    ...cut,
    ...registrations.map(({ id, name, ...shifts }) => ({
      id: `registration-${id}`,
      text: `Registration of ${name}: ${listStated(shifts, FEATURE_FIELDS.registrations.entry, words).join('; ') || 'shift not stated'}.`,
    })),
  ]
}

function makeRecordNote(id: string, record: object, node: FieldNode, words: SheetWords): Note[] {
  const stated = listStated(record, node.fields ?? {}, words)
  return stated.length === 0 ? [] : [{ id, text: `${node.label}: ${stated.join('; ')}.` }]
}

function listStated(record: object, fields: Readonly<Record<string, FieldNode>>, words: SheetWords): string[] {
  return Object.entries(record as Readonly<Record<string, string | number | boolean | null>>).flatMap(
    ([key, value]) => {
      const node = fields[key]
      if (node === undefined || value === null || value === '') return []
      return [`${node.label}: ${formatStated(value, node, words)}`]
    },
  )
}

function formatStated(value: string | number | boolean, node: FieldNode, words: SheetWords): string {
  if (typeof value === 'boolean') return formatObserved(value)
  if (typeof value === 'string') return node.choices === undefined ? value : getChoiceWord(node, value)
  return node.unit === 'mm' ? `${words.plan(value)} ${words.planUnit}` : asEntered(value, node.unit)
}
