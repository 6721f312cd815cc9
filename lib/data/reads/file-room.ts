import 'server-only'
import { getSettings } from '@/lib/config'
import { asFileSize } from '@/lib/engine/units'
import { type Actor, getMembership, requireProject } from '../records/authorization'
import type { TransactionClient } from '../store/client'
import { refuseField } from '../store/errors'
import { MAX_FILE_BYTES } from '../store/file-store'
import type { FileRoomView } from '../views'
import { type ReadContext, read } from './read'

/** What may still be kept, and whose limit it is. */
interface Room {
  readonly mostBytes: number
  readonly shares: readonly Share[]
}

interface Share {
  readonly of: string
  readonly usedBytes: number
  readonly mostBytes: number
}

/**
 * How much of what they may keep a project and the person's company have taken. For the person who is in the project; a fabricator
 * sees only its own part, since the rest is what others sent.
 */
export function getFileRoom(actor: Actor, projectId: string): Promise<FileRoomView> {
  return read(actor, async (context) => {
    await requireProject(context.tx, context.rights, projectId)
    const shares = await listShares(context, projectId)
    const isFabricator = getMembership(context.rights, projectId)?.role === 'fabricator'
    return { mostBytesPerFile: MAX_FILE_BYTES, shares: isFabricator ? shares.slice(1) : shares }
  })
}

/** Room for one more file of the person in the project. */
export async function findRoom(context: ReadContext, projectId: string): Promise<Room> {
  const shares = await listShares(context, projectId)
  const free = shares.map(({ usedBytes, mostBytes }) => Math.max(0, mostBytes - usedBytes))
  return { mostBytes: Math.min(MAX_FILE_BYTES, ...free), shares }
}

/** Says which limit a file of that size goes over. */
export function refuseWithoutRoom({ shares }: Room, sizeBytes: number): never {
  const full = shares.find(({ usedBytes, mostBytes }) => usedBytes + sizeBytes > mostBytes)
  if (full === undefined || sizeBytes > MAX_FILE_BYTES) {
    refuseField('file', 'too-large', `is larger than ${asFileSize(MAX_FILE_BYTES)}, the maximum for a file`)
  }
  refuseField('file', 'no-room', `does not fit: ${full.of} may keep ${asFileSize(full.mostBytes)} of files in all`)
}

/** Once more where the row is there and nobody else writes: two files on their way at once had both been let in. */
export async function requireRoom(context: ReadContext, projectId: string): Promise<void> {
  const shares = await listShares(context, projectId)
  if (shares.some(({ usedBytes, mostBytes }) => usedBytes > mostBytes)) {
    refuseWithoutRoom({ mostBytes: 0, shares }, 0)
  }
}

async function listShares({ tx, rights }: ReadContext, projectId: string): Promise<Share[]> {
  const { projectFilesMib, companyFilesMib } = getSettings()
  const project = {
    of: 'the project',
    usedBytes: await sumOfProject(tx, projectId),
    mostBytes: projectFilesMib * MIB,
  }
  const membership = getMembership(rights, projectId)
  if (membership === null) return [project]
  const { companyId } = membership
  const { name } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { name: true } })
  return [project, { of: name, usedBytes: await sumOfCompany(tx, companyId), mostBytes: companyFilesMib * MIB }]
}

interface Row {
  readonly sha256: string
  readonly sizeBytes: number
}

const COUNTED = { sha256: true, sizeBytes: true } as const

/** All that is kept for a project, taken off or not: the bytes stay. The same file in several places is kept once. */
async function sumOfProject(tx: TransactionClient, projectId: string): Promise<number> {
  const where = { revision: { projectId } }
  return sumOnce([
    ...(await tx.attachment.findMany({ where, select: COUNTED })),
    ...(await tx.artwork.findMany({ where, select: COUNTED })),
    ...(await tx.package.findMany({ where, select: COUNTED })),
  ])
}

/** What a company's people have sent, in all projects in which they act for it. */
async function sumOfCompany(tx: TransactionClient, companyId: string): Promise<number> {
  const people = await tx.membership.findMany({ where: { companyId }, select: { userId: true, projectId: true } })
  const places = new Set(people.map(({ userId, projectId }) => `${userId} ${projectId}`))
  const where = {
    uploadedById: { in: [...new Set(people.map(({ userId }) => userId))] },
    revision: { projectId: { in: [...new Set(people.map(({ projectId }) => projectId))] } },
  }
  const select = { ...COUNTED, uploadedById: true, revision: { select: { projectId: true } } } as const
  const rows = [...(await tx.attachment.findMany({ where, select })), ...(await tx.artwork.findMany({ where, select }))]
  return sumOnce(rows.filter(({ uploadedById, revision }) => places.has(`${uploadedById} ${revision.projectId}`)))
}

function sumOnce(rows: readonly Row[]): number {
  const sizes = new Map(rows.map(({ sha256, sizeBytes }) => [sha256, sizeBytes]))
  let sum = 0
  for (const size of sizes.values()) sum += size
  return sum
}

const MIB = 1024 * 1024
