import 'server-only'
import { now } from '@/lib/config'
import { trailFileInput } from '@/lib/inputs'
import { runJob } from '@/lib/jobs'
import { writeTrailPdf } from '@/lib/package'
import {
  filterTrail,
  findTrailTarget,
  listTrailChoices,
  listTrailDetails,
  TRAIL_THINGS,
  type TrailFilter,
} from '@/lib/review'
import { writeCsv } from '@/lib/spreadsheet'
import { type Actor, requireRevision } from '../records/authorization'
import { NotFoundError } from '../store/errors'
import type { FileDownload, RevisionTrailView, TrailEntryView } from '../views'
import { type ReadContext, read } from './read'
import { makeFileName } from './revision-view'
import { describeRecord } from './trail-words'

const EVERYTHING: TrailFilter = { person: '', act: '', thing: '' }

/** What happened to one revision, newest first, and what it can be filtered by. Not for fabricators: it names the others. */
export function listRevisionTrail(
  actor: Actor,
  revisionId: string,
  filter: TrailFilter = EVERYTHING,
): Promise<RevisionTrailView> {
  return read(actor, async (context) => {
    const { entries } = await load(context, revisionId)
    return { entries: filterTrail(entries, filter), count: entries.length, choices: listTrailChoices(entries) }
  })
}

async function load({ tx, rights }: ReadContext, revisionId: string) {
  const { revision } = await requireRevision(tx, rights, revisionId, 'revision:view-trail')
  const rows = await tx.trailRecord.findMany({ where: { revisionId: revision.id }, orderBy: { sequence: 'desc' } })
  const entries = rows.map(
    (row): TrailEntryView => ({
      sequence: row.sequence,
      at: row.at,
      actorName: row.actorName,
      action: row.action,
      sentence: describeRecord(row, new Map()),
      thing: TRAIL_THINGS[row.subjectKind]?.label ?? row.subjectKind,
      target: findTrailTarget(row),
      details: listTrailDetails(row.detailsJson),
      revisionId: row.revisionId,
      hash: row.hash,
    }),
  )
  return { revision, entries }
}

/** The trail of a revision as a file, oldest first, as a reader of paper goes through it. */
export async function getTrailFile(actor: Actor, revisionId: string, wanted: string | null): Promise<FileDownload> {
  const parsed = trailFileInput.safeParse({ revisionId, format: wanted })
  if (!parsed.success) throw new NotFoundError('file')
  const { entries, name } = await read(actor, async (context) => {
    const loaded = await load(context, parsed.data.revisionId)
    const { name: projectName } = await context.tx.project.findUniqueOrThrow({
      where: { id: loaded.revision.projectId },
    })
    return { entries: loaded.entries.toReversed(), name: [projectName, loaded.revision.label] as const }
  })
  if (parsed.data.format === 'csv') {
    return {
      fileName: makeFileName(name, 'trail.csv'),
      mediaType: 'text/csv; charset=utf-8',
      bytes: new TextEncoder().encode(writeCsv([CSV_HEAD, ...entries.map(toCsvRow)])),
    }
  }
  const at = now().toISOString()
  const page = {
    heading: `Trail of ${name[0]}, revision ${name[1]}`,
    facts: [
      ['Records', String(entries.length)],
      ['Written', `${at} by ${actor.name}`],
    ] as const,
    entries: entries.map(({ sequence, at: when, actorName, sentence, details, hash }) => ({
      sequence,
      at: when,
      actorName,
      sentence,
      details: [...details],
      hash,
    })),
  }
  const identity = { title: page.heading, subject: page.heading, author: actor.name, at }
  const bytes = await writeTrailPdf(page, identity, (order) => runJob('documents', order))
  return { fileName: makeFileName(name, 'trail.pdf'), mediaType: 'application/pdf', bytes: new Uint8Array(bytes) }
}

const CSV_HEAD = ['No.', 'At (UTC)', 'Who', 'Act', 'Thing', 'What', 'Details', 'Hash']

function toCsvRow({ sequence, at, actorName, action, thing, sentence, details, hash }: TrailEntryView) {
  const words = details.map(({ label, text }) => `${label}: ${text}`).join('\n')
  return [sequence, at, actorName, action, thing, sentence, words, hash]
}
