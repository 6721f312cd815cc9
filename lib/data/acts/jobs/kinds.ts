import 'server-only'
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
}

export const KEPT_KINDS: Readonly<Record<string, KeptKind>> = {
  artwork: { run: runArtworkReading },
  remedies: { run: runRemedies },
  'way-out': { run: runWayOut },
}
