import { FILE_UNITS, makeSheetContents } from '@/lib/drawing'
import type { Design, Evaluation } from '@/lib/engine'

/** A revision as the person who cites its drawing sees it. */
export interface Cited {
  readonly design: Design
  readonly evaluation: Pick<Evaluation, 'zones'>
}

/**
 * A note of the drawing by its number, as people cite it. Notes are written from the design: the number is looked up, so
 * that nobody in the scenario cites a note that is not there, or another one.
 *
 * @param id  of the note: the field of the brief that it is written from
 */
export function citeNote({ design, evaluation }: Cited, id: string): string {
  const contents = makeSheetContents(design, evaluation, FILE_UNITS)
  const notes = contents.flatMap((block) => (block.kind === 'notes' ? block.notes : []))
  const at = notes.findIndex((note) => note.id === id)
  if (at === -1) throw new Error(`the drawing of ${design.name} has no note "${id}"`)
  return `note ${at + 1}`
}
