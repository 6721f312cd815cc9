import { type Actor, addArtwork, listDueJobs, runKeptJob } from '@/lib/data'
import { type PIPIT_ARTWORK, readArtwork, type SKUA_ARTWORK } from './read-files'
import type { Stage } from './stage'

/** Uploads files of a revision, and has them read as the server does. */
export async function uploadArtwork(
  { carryOut }: Stage,
  actor: Actor,
  revisionId: string,
  fileNames: typeof PIPIT_ARTWORK | typeof SKUA_ARTWORK,
): Promise<void> {
  for (const fileName of fileNames) {
    await carryOut(`upload ${fileName}`, () =>
      addArtwork(actor, { revisionId, fileName, bytes: readArtwork(fileName) }),
    )
  }
  for (const jobId of await listDueJobs()) await runKeptJob(jobId)
}
