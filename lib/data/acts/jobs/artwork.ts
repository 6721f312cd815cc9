import 'server-only'
import type { ArtworkFacts, OnPlanFacts } from '@/lib/artwork'
import { readStoredJson } from '@/lib/engine'
import { groundOf } from '@/lib/engine/artwork-check'
import { type ArtworkRevisionInput, artworkRevisionInput } from '@/lib/inputs'
import { type ArtworkOrder, type JobOptions, runJob } from '@/lib/jobs'
import { isArtworkDone, makeArtworkJobKey, putArtworkJob } from '../../consequences/artwork-job'
import { changeContent } from '../../consequences/changed-content'
import { write } from '../../consequences/write'
import { read } from '../../reads/read'
import { hasPicture, makePictureKey, writePictureContent } from '../../records/artwork-picture'
import { listGivenRoles } from '../../records/artwork-reading'
import { type Actor, requireRevision, requireRevisionInView } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { refuseClash } from '../../store/errors'
import { keepFile, readKeptFile } from '../../store/file-store'
import type { ActResult } from '../../views'

/** Media types that hold files which readers are for. */
const READ_TYPES: readonly string[] = ['text/plain', 'application/zip']

/** Asks for the artwork to be read again, where it was stopped or failed. */
export function readArtworkAgain(actor: Actor, input: ArtworkRevisionInput): Promise<ActResult<null>> {
  return write(actor, 'read-artwork-again', input, async (context) => {
    const { revision } = await requireRevision(context.tx, context.rights, input.revisionId, 'revision:edit')
    const loaded = await loadRevision(context.tx, revision.id)
    if (loaded.artwork.key === null) refuseClash('There is no artwork to read.')
    await putArtworkJob(context, loaded, true)
    return null
  })
}

/** Stops the reading of the artwork. What was read stays read. */
export function stopArtworkReading(actor: Actor, input: ArtworkRevisionInput): Promise<ActResult<null>> {
  return write(actor, 'stop-artwork-reading', input, async ({ tx, rights, at }) => {
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'revision:edit')
    const { artwork } = await loadRevision(tx, revision.id)
    const key = makeArtworkJobKey(revision.id, artwork)
    if (key === null) return null
    await tx.job.updateMany({ where: { key, state: 'waiting' }, data: { state: 'stopped', finishedAt: at } })
    await tx.job.updateMany({ where: { key, state: 'running' }, data: { isStopAsked: true } })
    return null
  })
}

/**
 * Reads the artwork of a revision as it is now, lays it over the plan, and keeps what the files say and do there. Carried out twice it leaves the same.
 *
 * @throws RefusalError where the person who asked no longer may
 */
export async function runArtworkReading(
  actor: Actor,
  inputJson: string,
  options: JobOptions,
): Promise<{ readonly fileCount: number }> {
  const { revisionId } = readStoredJson('a job that was asked for', artworkRevisionInput, inputJson)
  const asked = await read(actor, async ({ tx, rights }) => {
    await requireRevisionInView(tx, rights, revisionId)
    const { record, artwork, design } = await loadRevision(tx, revisionId)
    const files = record.artwork.filter(({ mediaType }) => READ_TYPES.includes(mediaType))
    const { key } = artwork
    const isDone = isArtworkDone(artwork) && key !== null && (await hasPicture(tx, key))
    return { artwork, files, isDone, roles: listGivenRoles(record), ground: groundOf(design) }
  })
  const { key, onPlanKey } = asked.artwork
  if (key === null || asked.isDone) return { fileCount: 0 }
  const order: ArtworkOrder = {
    files: await Promise.all(
      asked.files.map(async ({ originalName, sha256 }) => ({ name: originalName, bytes: await readKeptFile(sha256) })),
    ),
    roles: asked.roles,
    ground: asked.ground,
  }
  const { facts, onPlan, picture } = await runJob('artwork', order, options)
  const { sha256: pictureSha256 } = await keepFile(picture)
  await keepReading(actor, revisionId, { key, facts, onPlanKey, onPlan, pictureSha256 })
  return { fileCount: facts.files.length }
}

interface Reading {
  readonly key: string
  readonly facts: ArtworkFacts
  readonly onPlanKey: string | null
  readonly onPlan: OnPlanFacts | null
  readonly pictureSha256: string
}

/** Results are recorded again in the same transaction, so that what rested on unread files is voided. */
async function keepReading(
  actor: Actor,
  revisionId: string,
  { key, facts, onPlanKey, onPlan, pictureSha256 }: Reading,
): Promise<void> {
  const input: ArtworkRevisionInput = { revisionId }
  const kept = await write(actor, 'keep-artwork-reading', input, async (context) => {
    const { tx, rights, at, recordByItself } = context
    const { revision } = await requireRevisionInView(tx, rights, revisionId)
    const loaded = await loadRevision(tx, revisionId)
    const store = async () => {
      const parts = [
        { key, part: 'facts', content: JSON.stringify(facts) },
        ...(onPlanKey === null || onPlan === null
          ? []
          : [{ key: onPlanKey, part: 'on-plan', content: JSON.stringify(onPlan) }]),
        { key: makePictureKey(key), part: 'picture', content: writePictureContent(pictureSha256) },
      ]
      const there = await tx.artworkReading.findMany({
        where: { key: { in: parts.map((part) => part.key) } },
        select: { key: true },
      })
      const added = parts.filter((part) => !there.some((row) => row.key === part.key))
      for (const { key: partKey, part, content } of added) {
        await tx.artworkReading.create({
          data: { key: partKey, part, contentJson: content, createdAt: at },
        })
      }
      const [first] = added
      if (first === undefined) return
      await recordByItself({
        action: 'artwork-read',
        subject: { kind: 'revision', id: revisionId },
        projectId: revision.projectId,
        revisionId,
        details: { fileCount: facts.files.length, readingKey: first.key },
      })
    }
    // Files that are no longer those: what was read of them stays true of them, and moves nothing here.
    if (loaded.artwork.key === key && loaded.artwork.onPlanKey === onPlanKey)
      await changeContent(context, loaded, null, store)
    else await store()
    return null
  })
  if (!kept.ok) throw new Error(`what was read of artwork could not be kept: ${kept.refusal.kind}`)
}
