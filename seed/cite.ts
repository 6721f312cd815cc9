import { FILE_UNITS, makeSheetContents } from '@/lib/drawing'
import type { Design, Evaluation } from '@/lib/engine'

/** A revision as the person who cites its drawing sees it. */
export interface Cited {
  readonly design: Design
  readonly evaluation: Pick<Evaluation, 'zones' | 'bends'>
}

/**
 * A note of the drawing by its name, as people cite it: numbers move with every note that the design brings or drops. Notes are written from the
 * design: the name is looked up, so that nobody in the scenario cites a note that is not there.
 *
 * @param id  of the note: the field of the brief that it is written from
 */
export function citeNote({ design, evaluation }: Cited, id: string): string {
  const contents = makeSheetContents(design, evaluation, FILE_UNITS)
  const notes = contents.flatMap((block) => (block.kind === 'notes' ? block.notes : []))
  const name = notes.find((note) => note.id === id)?.text.split(':')[0]
  if (name === undefined) throw new Error(`the drawing of ${design.name} has no note "${id}"`)
  return `the note "${name}"`
}
