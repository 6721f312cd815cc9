import type { ArtworkFacts } from '@/lib/artwork'

/** What is known of the files of a revision's artwork. */
export interface ArtworkReadingView {
  /** `none`: there is no file; `unread`: nobody has asked for them to be read. */
  readonly state: 'none' | 'unread' | 'waiting' | 'running' | 'failed' | 'stopped' | 'read'
  /** 0 to 1. */
  readonly progress: number
  readonly failure: string | null
  readonly facts: ArtworkFacts | null
  readonly mayEdit: boolean
}
