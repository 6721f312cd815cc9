import { type Design, FEATURE_FIELDS, type FieldNode, getChoiceWord } from '@/lib/engine'
import { listStatedFields, type SheetWords } from './words'

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
      text: `Registration of ${name}: ${listStatedFields(shifts, FEATURE_FIELDS.registrations.entry, words).join('; ') || 'shift not stated'}.`,
    })),
  ]
}

function makeRecordNote(id: string, record: object, node: FieldNode, words: SheetWords): Note[] {
  const stated = listStatedFields(record, node.fields ?? {}, words)
  return stated.length === 0 ? [] : [{ id, text: `${node.label}: ${stated.join('; ')}.` }]
}
