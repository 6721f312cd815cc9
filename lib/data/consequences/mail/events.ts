import 'server-only'
import {
  loadForeignNames,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueTo,
  type Reader,
  type TrailEvent,
  withoutForeignNames,
} from './readers'

/** Main events of a revision's path, each with a message of its own. */
const EVENT_ACTIONS = ['revision-shared', 'declared-buildable', 'declared-not-buildable', 'revision-released'] as const
type EventAction = (typeof EVENT_ACTIONS)[number]

export function isEventAction(action: string): action is EventAction {
  return (EVENT_ACTIONS as readonly string[]).includes(action)
}

export async function queueEventNotices(trailEvent: TrailEvent, action: EventAction): Promise<void> {
  if (action === 'revision-shared') await queueSharedNotices(trailEvent)
  else if (action === 'revision-released') await queueReleaseNotices(trailEvent)
  else await queueDeclarationNotices(trailEvent, action === 'declared-buildable')
}

async function loadPlaceAndReaders(trailEvent: TrailEvent) {
  const { row, subject } = await loadSubject(trailEvent.tx, trailEvent.note.revisionId ?? '')
  return { row, subject, readers: await loadReaders(trailEvent, subject) }
}

/** To everybody of the company who is in the project. */
async function queueSharedNotices(trailEvent: TrailEvent): Promise<void> {
  const { tx, note, by } = trailEvent
  const { row, readers } = await loadPlaceAndReaders(trailEvent)
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
    await queueTo(trailEvent, reader, notice, `revision:${row.id}`)
  }
}

const isOfTeam = ({ role }: Reader) => role === 'lead' || role === 'member'

/** To the team, and to the colleagues of whoever declared. No other fabricator learns of it. */
async function queueDeclarationNotices(trailEvent: TrailEvent, isBuildable: boolean): Promise<void> {
  const { tx, note, by } = trailEvent
  const declaration = await tx.declaration.findUniqueOrThrow({
    where: { id: note.subject.id },
    include: { company: true },
  })
  const { row, readers } = await loadPlaceAndReaders(trailEvent)
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
    await queueTo(trailEvent, reader, notice, `revision:${row.id}`)
  }
}

/** To everybody who may see the revision, each with the hash of the own edition. */
async function queueReleaseNotices(trailEvent: TrailEvent): Promise<void> {
  const { tx, by } = trailEvent
  const { row, readers } = await loadPlaceAndReaders(trailEvent)
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
    await queueTo(trailEvent, reader, notice, `revision:${row.id}`)
  }
}
