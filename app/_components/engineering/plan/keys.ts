import type { KeyboardEvent } from 'react'
import type { PointMm } from '@/lib/plan'
import type { Chosen, PlanEditor } from './use-plan-editor'

const ARROWS: Readonly<Record<string, PointMm>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** Keys on something in the list: arrows move it by the step, with Shift by ten; Delete removes it. */
export function handleKey(event: KeyboardEvent, editor: PlanEditor, chosen: Chosen, atMm: PointMm | null): void {
  if (editor.isReadOnly || event.ctrlKey || event.metaKey || event.altKey) return
  const arrow = ARROWS[event.key]
  if (arrow !== undefined) {
    event.preventDefault()
    const step = editor.stepMm * (event.shiftKey ? 10 : 1)
    editor.moveChosen(chosen, [arrow[0] * step, arrow[1] * step], atMm)
  } else if (event.key === 'Delete' || event.key === 'Backspace') {
    event.preventDefault()
    editor.removeChosen(chosen)
  } else if (event.key === 'Escape') {
    editor.choose(null)
  }
}
