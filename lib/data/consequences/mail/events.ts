import 'server-only'
import {
  type Happening,
  loadForeignNames,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueTo,
  type Reader,
  withoutForeignNames,
} from './readers'

/** Main events of a revision's path, each with a message of its own. */
const EVENT_ACTIONS = ['revision-shared', 'declared-buildable', 'declared-not-buildable', 'revision-released'] as const
type EventAction = (typeof EVENT_ACTIONS)[number]

export function isEventAction(action: string): action is EventAction {
  return (EVENT_ACTIONS as readonly string[]).includes(action)
}

export async function queueEventNotices(happening: Happening, action: EventAction): Promise<void> {
  if (action === 'revision-shared') await queueSharedNotices(happening)
  else if (action === 'revision-released') await queueReleaseNotices(happening)
  else await queueDeclarationNotices(happening, action === 'declared-buildable')
}

async function loadPlaceAndReaders(happening: Happening) {
  const { row, subject } = await loadSubject(happening.tx, happening.note.revisionId ?? '')
  return { row, subject, readers: await loadReaders(happening, subject) }
}

/** To everybody of the company who is in the project. */
async function queueSharedNotices(happening: Happening): Promise<void> {
  const { tx, note, by } = happening
  const { row, readers } = await loadPlaceAndReaders(happening)
  const company = await tx.company.findUniqueOrThrow({ where: { id: note.subject.id } })
  for (const reader of readers.filter(({ fabricatorCompanyId }) => fabricatorCompanyId === company.id)) {
    if (reader.off.has('shared')) continue
    const foreignNames = await loadForeignNames(tx, company.id)
    const notice = {
      kind: 'shared' as const,
      place: makePlace(row, foreignNames, ''),
      companyName: company.name,
      by: by.name,
      wanted: makeWanted('review it, ask about anything unclear, and declare whether it can be built', row),
    }
    await queueTo(happening, reader, notice, `revision:${row.id}`)
  }
}

const isOfTeam = ({ role }: Reader) => role === 'lead' || role === 'member'

/** To the team, and to the colleagues of whoever declared. No other fabricator learns of it. */
async function queueDeclarationNotices(happening: Happening, isBuildable: boolean): Promise<void> {
  const { tx, note, by } = happening
  const declaration = await tx.declaration.findUniqueOrThrow({
    where: { id: note.subject.id },
    include: { company: true },
  })
  const { row, readers } = await loadPlaceAndReaders(happening)
  for (const reader of readers) {
    const isColleague = reader.fabricatorCompanyId === declaration.companyId
    if (!(isOfTeam(reader) || isColleague) || reader.off.has('declaration')) continue
    const foreignNames = await loadForeignNames(tx, reader.fabricatorCompanyId)
    const notice = {
      kind: 'declaration' as const,
      place: makePlace(row, foreignNames, '/sign-off'),
      companyName: declaration.company.name,
      isBuildable,
      by: by.name,
      note: withoutForeignNames(declaration.note, foreignNames) ?? '',
      wanted:
        isBuildable || isColleague ? null : makeWanted('change the design, or ask what would make it buildable', row),
    }
    await queueTo(happening, reader, notice, `revision:${row.id}`)
  }
}

/** To everybody who may see the revision, each with the hash of the own edition. */
async function queueReleaseNotices(happening: Happening): Promise<void> {
  const { tx, by } = happening
  const { row, readers } = await loadPlaceAndReaders(happening)
  const packages = await tx.package.findMany({ where: { revisionId: row.id } })
  for (const reader of readers) {
    if (reader.off.has('released')) continue
    const foreignNames = await loadForeignNames(tx, reader.fabricatorCompanyId)
    const audience = reader.fabricatorCompanyId ?? 'team'
    const notice = {
      kind: 'released' as const,
      place: makePlace(row, foreignNames, '/sign-off'),
      by: by.name,
      packageSha256: packages.find((edition) => edition.audience === audience)?.sha256 ?? null,
    }
    await queueTo(happening, reader, notice, `revision:${row.id}`)
  }
}
