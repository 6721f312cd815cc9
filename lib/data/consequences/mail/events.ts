import 'server-only'
import { type ActionsTold, type DeclarationVerdict, describeCondition } from '@/lib/review'
import { readVerdict } from '../../records/declaration-record'
import {
  type AnyRecordedAct,
  type Letter,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueLetters,
  type Reader,
  type RecordedAct,
  withoutForeignNames,
} from './readers'

/** Main events of a revision's path, each with a message of its own. */

async function loadPlaceAndReaders(act: AnyRecordedAct) {
  const { row, subject } = await loadSubject(act.tx, act.note.revisionId ?? '')
  return { row, subject, readers: await loadReaders(act, subject) }
}

/** To everybody of the company who is in the project. */
export async function queueSharedNotices(act: RecordedAct<'revision-shared'>): Promise<void> {
  const { tx, note, by } = act
  const { row, readers } = await loadPlaceAndReaders(act)
  const company = await tx.company.findUniqueOrThrow({ where: { id: note.subject.id } })
  const letters: Letter[] = []
  for (const reader of readers.filter(({ fabricatorCompanyId }) => fabricatorCompanyId === company.id)) {
    if (reader.off.has('shared')) continue
    const { foreignNames } = reader
    const notice = {
      kind: 'shared' as const,
      place: makePlace(row, foreignNames),
      companyName: company.name,
      by: by.name,
      wanted: makeWanted('review it, ask about anything unclear, and declare whether it can be built', row),
    }
    letters.push({ reader, notice, subjectKey: `revision:${row.id}` })
  }
  await queueLetters(act, letters)
}

/** What a verdict asks of the team, role by role: nobody is asked for what they may not do. */
const DECIDE = 'decide on each condition: take it over, decline it, or make it an action'
const CHANGE = 'change the design, or ask what would make it buildable'
const WANTED: Readonly<Record<DeclarationVerdict, Readonly<Partial<Record<string, string>>>>> = {
  buildable: {},
  'with-conditions': { lead: DECIDE },
  'not-buildable': { lead: CHANGE, member: CHANGE },
}

const isOfTeam = ({ role }: Reader) => role === 'lead' || role === 'member' || role === 'quality'

/** To the team, and to the colleagues of the person who declared. No other fabricator learns of it. */
export async function queueDeclarationNotices(act: RecordedAct<ActionsTold<'declaration-readers'>>): Promise<void> {
  const { tx, note, by } = act
  const declaration = await tx.declaration.findUniqueOrThrow({
    where: { id: note.subject.id },
    include: { company: true, conditions: { orderBy: { ordinal: 'asc' } } },
  })
  const verdict = readVerdict(declaration)
  const { row, readers } = await loadPlaceAndReaders(act)
  const letters: Letter[] = []
  for (const reader of readers) {
    const isColleague = reader.fabricatorCompanyId === declaration.companyId
    if (!(isOfTeam(reader) || isColleague) || reader.off.has('declaration')) continue
    const { foreignNames } = reader
    const wanted = isColleague ? undefined : WANTED[verdict][reader.role]
    const notice = {
      kind: 'declaration' as const,
      place: makePlace(row, foreignNames, 'sign-off'),
      companyName: declaration.company.name,
      verdict,
      by: by.name,
      note: withoutForeignNames(declaration.note, foreignNames) ?? '',
      conditions: declaration.conditions.map(
        (condition) =>
          withoutForeignNames(describeCondition(condition), foreignNames) ?? 'a condition that is on the page',
      ),
      wanted: wanted === undefined ? null : makeWanted(wanted, row),
    }
    letters.push({ reader, notice, subjectKey: `revision:${row.id}` })
  }
  await queueLetters(act, letters)
}

/** To everybody whose edition was issued, with its hash. */
export async function queueReleaseNotices(act: RecordedAct<'package-issued'>): Promise<void> {
  const { tx, by, note } = act
  const { row, readers } = await loadPlaceAndReaders(act)
  const off = await tx.releaseExclusion.findMany({ where: { revisionId: row.id, putBackAt: null } })
  const { audience, sha256 } = await tx.package.findUniqueOrThrow({ where: { id: note.subject.id } })
  const editions = await tx.package.findMany({ where: { revisionId: row.id }, select: { audience: true } })
  const isOwn = (reader: Reader) => {
    const own = reader.fabricatorCompanyId ?? 'team'
    // Who has no edition of their own is told with the team's, without its hash.
    return own === audience || (audience === 'team' && !editions.some((edition) => edition.audience === own))
  }
  const letters: Letter[] = []
  for (const reader of readers.filter(isOwn)) {
    // It is no release of theirs.
    const isTakenOff = off.some(({ companyId }) => companyId === reader.fabricatorCompanyId)
    if (isTakenOff || reader.off.has('released')) continue
    const { foreignNames } = reader
    const notice = {
      kind: 'released' as const,
      place: makePlace(row, foreignNames, 'sign-off'),
      by: by.name,
      packageSha256: (reader.fabricatorCompanyId ?? 'team') === audience ? sha256 : null,
    }
    letters.push({ reader, notice, subjectKey: `revision:${row.id}` })
  }
  await queueLetters(act, letters)
}
