import type { ArtworkFacts, OnPlanFacts } from '@/lib/artwork'

/** What is known of the files of a revision's artwork. */
export interface ArtworkReadingView {
  /** `none`: there is no file; `unread`: nobody has asked for them to be read; `read`: and laid over the plan, where there is one. */
  readonly state: 'none' | 'unread' | 'waiting' | 'running' | 'failed' | 'stopped' | 'read'
  /** 0 to 1. */
  readonly progress: number
  readonly failure: string | null
  readonly facts: ArtworkFacts | null
  /** What they do on the plan; null until they have been laid over it, and where no plan is drawn. */
  readonly onPlan: OnPlanFacts | null
  /** Were the layers drawn, so that they can be looked at? Files that were read by an earlier version were not. */
  readonly hasPicture: boolean
  readonly mayEdit: boolean
}
