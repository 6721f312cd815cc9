import 'server-only'
import { rectifyConfusion } from 'unicode-confusables'
import { type Design, readStoredDesign } from '@/lib/engine'
import type { Blocker } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import type { PersonRights } from './authorization'
import type { LoadedRevision } from './loaded-revision'
import { foldName } from './names'

/** Part number and revision as they are compared over the whole workspace: two that nobody tells apart on paper are one. */
export function makeIssueKey({ brief }: Design, label: string): string {
  return JSON.stringify([foldNumber(brief.partNumber), foldNumber(label)])
}

/**
 * Dashes of every length are one, signs that print nothing are none, and letters of other scripts count as the Latin ones that they look like
 * (Unicode UTS 39). Plain letters and digits stay what they are: O and 0 are two.
 */
function foldNumber(text: string): string {
  const visible = text.normalize('NFKC').replaceAll(/\p{Default_Ignorable_Code_Point}/gu, '')
  const plain = visible.replaceAll(/[\p{Pd}\u2212]/gu, '-').replaceAll(/\P{ASCII}/gu, toPlainLetter)
  return foldName(plain)
}

/** The tables take capital I and small l for one; here the capital stays an I. */
function toPlainLetter(sign: string): string {
  const plain = rectifyConfusion(sign)
  return plain === 'l' && sign !== sign.toLowerCase() ? 'I' : plain
}

/** What a release of this revision replaces: what is in force in the project under the same part number, newest first. */
export function listReplaced({
  record,
  design,
}: LoadedRevision): readonly { readonly id: string; readonly label: string }[] {
  const number = foldNumber(design.brief.partNumber)
  return record.project.revisions.filter(({ id, partNumber }) => id !== record.id && foldNumber(partNumber) === number)
}

interface EarlierIssue {
  readonly partNumber: string
  readonly label: string
  readonly issuedAt: Date
  readonly contentHash: string
  readonly project: { readonly id: string; readonly name: string }
}

/** The first issue of this part number and revision, in whatever project; null while there is none. */
async function findEarlierIssue(
  tx: TransactionClient,
  { record, design }: LoadedRevision,
): Promise<EarlierIssue | null> {
  const issueKey = makeIssueKey(design, record.label)
  const row = await tx.issuedRevision.findUnique({
    where: { issueKey },
    include: { revision: { select: { project: { select: { id: true, name: true } } } } },
  })
  if (row !== null) return row.revisionId === record.id ? null : { ...row, project: row.revision.project }
  return findReleaseFromBefore(tx, record.id, record.labelKey, issueKey)
}

/** Releases from before issues were kept: their packages are there, and their designs say the number. */
async function findReleaseFromBefore(
  tx: TransactionClient,
  revisionId: string,
  labelKey: string,
  issueKey: string,
): Promise<EarlierIssue | null> {
  const packages = await tx.package.findMany({
    where: { audience: 'team', revisionId: { not: revisionId }, revision: { labelKey, issue: null } },
    select: {
      releasedAt: true,
      contentHash: true,
      revision: { select: { label: true, designJson: true, project: { select: { id: true, name: true } } } },
    },
    orderBy: { releasedAt: 'asc' },
  })
  for (const { releasedAt, contentHash, revision } of packages) {
    const design = readStoredDesign(revision.designJson)
    if (makeIssueKey(design, revision.label) !== issueKey) continue
    const { label, project } = revision
    return { partNumber: design.brief.partNumber, label, issuedAt: releasedAt, contentHash, project }
  }
  return null
}

/**
 * What keeps a revision from being released under a number and letter that stand for other content already. The project is
 * named to its own people alone.
 */
export async function findIssueBlockers(
  tx: TransactionClient,
  loaded: LoadedRevision,
  rights: PersonRights,
): Promise<Blocker[]> {
  if (loaded.design.brief.partNumber.trim() === '') return []
  const first = await findEarlierIssue(tx, loaded)
  if (first === null) return []
  const { partNumber, label, issuedAt, contentHash, project } = first
  const isKnown = rights.memberships.some(({ projectId }) => projectId === project.id)
  const where = isKnown ? `in ${project.name}` : 'in another project of this workspace'
  return [
    {
      code: 'number-issued',
      sentence: `${partNumber} revision ${label} was issued ${issuedAt.toISOString().slice(0, 10)} ${where}, with the content ${contentHash.slice(0, 16)}: take another revision label or part number`,
      target: { tab: 'brief', id: 'partNumber' },
    },
  ]
}
