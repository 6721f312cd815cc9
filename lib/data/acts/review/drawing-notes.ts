import 'server-only'
import { randomUUID } from 'node:crypto'
import { hasGeneralNote, withGeneralNote } from '@/lib/engine'
import type { NoteOnDrawingInput } from '@/lib/inputs'
import { replaceDesign, requireDesignSeen, type SavedDesign } from '../../consequences/design-save'
import { write } from '../../consequences/write'
import { type Actor, requireAtStage } from '../../records/authorization'
import { checkDesign } from '../../records/design-input'
import { loadRevision } from '../../records/loaded-revision'
import { refuseClash } from '../../store/errors'
import type { ActResult } from '../../views'
import { placeOfThread, requireThread } from './threads'

/** What was agreed in a thread becomes a general note of the drawing, which every sheet and package prints. */
export function noteOnDrawing(actor: Actor, input: NoteOnDrawingInput): Promise<ActResult<SavedDesign>> {
  return write(actor, 'note-on-drawing', input, async (context) => {
    const { tx, rights, record } = context
    const { scope, thread } = await requireThread(tx, rights, input.threadId)
    requireAtStage(rights, scope.subject, 'revision:edit', (subject) => subject)
    if (thread.state === 'open') refuseClash('The thread is still open: nothing is agreed yet.')
    const stored = await loadRevision(tx, scope.revision.id)
    requireDesignSeen(stored, input.seenVersion)
    const { design } = stored
    if (hasGeneralNote(design, input.text)) refuseClash('The drawing already has this note.')
    const checked = checkDesign(withGeneralNote(design, randomUUID(), input.text))
    return replaceDesign(context, stored, checked, 'design-saved', () =>
      record({
        action: 'thread-noted',
        ...placeOfThread(scope, thread),
        details: { title: thread.title, note: input.text },
      }),
    )
  })
}
