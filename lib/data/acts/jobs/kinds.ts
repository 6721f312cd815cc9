import 'server-only'
import type { RemedyReport } from '@/lib/engine'
import type { WayOut } from '@/lib/engine/remedies'
import type { JobOptions } from '@/lib/jobs'
import type { Actor } from '../../records/authorization'
import { runArtworkReading } from './artwork'
import { runRemedies, runWayOut } from './remedies'

/**
 * A kind of job that is kept: it goes on where the server was restarted, and its result waits for the person who asked.
 * It may run more than once, when a process dies in its midst; its result is written once. So what it changes by itself it changes once, however
 * often it runs.
 */
interface KeptKind {
  /** As stored when the job was asked for; rights are looked up when it runs. */
  readonly run: (actor: Actor, inputJson: string, options: JobOptions) => Promise<unknown>
  /** Whether a result is all that there is to find: one that is not is sought again when somebody asks. Absent: always. */
  readonly isWhole?: (result: unknown) => boolean
}

export const KEPT_KINDS: Readonly<Record<string, KeptKind>> = {
  artwork: { run: runArtworkReading },
  remedies: { run: runRemedies, isWhole: (result) => (result as Partial<RemedyReport>).search?.isStopped !== true },
  'way-out': { run: runWayOut, isWhole: (result) => (result as Partial<WayOut>).isStopped !== true },
}
