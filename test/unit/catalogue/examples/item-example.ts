import type { Design, ReviewFacts } from '@/lib/engine'
import type { ItemVerdict } from '@/lib/engine/catalogue'

/** A change to the example design, and what the item must say then. */
export interface ItemExample {
  readonly name: string
  /** Edits a copy; absent where the example design is right as it stands. */
  readonly change?: (design: Design) => void
  readonly facts?: ReviewFacts
  readonly expect: ItemVerdict
}
