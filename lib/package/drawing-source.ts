import type { SheetIdentity, SheetResults } from '@/lib/drawing'
import type { Design } from '@/lib/engine'

/** What the drawing of a revision is made from. It is one drawing, no matter who looks at it or whose edition it is in. */
export interface DrawingSource {
  readonly design: Design
  readonly results: SheetResults | null
  readonly identity: SheetIdentity
}
