import { EMPTY_PLAN } from '@/lib/plan'
import type { Design } from './design'

/** Notes without a place hold for the whole drawing; a design of which nothing is drawn may have them too. */
export function hasGeneralNote({ plan }: Design, text: string): boolean {
  return plan?.notes.some((note) => note.atMm === null && note.text.trim() === text.trim()) ?? false
}

/** The design with one more note that holds for the whole drawing. */
export function withGeneralNote(design: Design, id: string, text: string): Design {
  const plan = design.plan ?? EMPTY_PLAN
  return { ...design, plan: { ...plan, notes: [...plan.notes, { id, text: text.trim(), atMm: null }] } }
}
