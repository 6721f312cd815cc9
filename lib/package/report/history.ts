import type { Content } from 'pdfmake/interfaces'
import { listItemStates } from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, makeEmptyPart, makeTable } from './style'
import { formatTime } from './words'

/** What happened, in its order; the release itself comes last. */
export function makeChronology({ chronology, release }: PackageContent): Content[] {
  const rows = [
    ...chronology.map(({ at, who, what }) => [formatTime(at), who, what]),
    [formatTime(release.at), release.byName, 'released the revision'],
  ]
  return [
    makeTable(
      [
        { label: 'When', width: 122 },
        { label: 'Who', width: 100 },
        { label: 'What', width: '*' },
      ],
      rows,
      level1('13  Chronology'),
    ),
  ]
}

/** Everybody who had a part, and those who were asked and said nothing. */
export function makeParticipants({ snapshot, release }: PackageContent): Content[] {
  const parts = new Map<string, Set<string>>()
  const add = (name: string, what: string) => parts.set(name, (parts.get(name) ?? new Set()).add(what))
  for (const { name } of snapshot.authors) add(name, 'author')
  for (const { name } of snapshot.editors) add(name, 'content')
  for (const { answer } of listItemStates(snapshot)) if (answer !== null) add(answer.answeredByName, 'answers')
  for (const waiver of snapshot.waivers) {
    add(waiver.proposedByName, 'proposed waivers')
    if (waiver.decidedByName !== null) add(waiver.decidedByName, 'decided on waivers')
  }
  for (const thread of snapshot.threads) {
    for (const { authorName, companyName } of thread.comments) add(`${authorName}, ${companyName}`, 'comments')
  }
  for (const { ownerName } of snapshot.actions) add(ownerName, 'owns actions')
  for (const { madeByName, companyName } of snapshot.declarations) add(`${madeByName}, ${companyName}`, 'declared')
  for (const { name } of snapshot.signatures) add(name, 'signed')
  add(release.byName, 'released')
  const spoke = new Set([
    ...snapshot.declarations.map(({ companyId }) => companyId),
    ...snapshot.threads
      .filter(
        ({ audienceCompanyId, comments, openedByCompanyName }) =>
          audienceCompanyId !== null && comments.some(({ companyName }) => companyName === openedByCompanyName),
      )
      .map(({ openedByCompanyId }) => openedByCompanyId),
  ])
  const silent = snapshot.sharedWith.filter(({ companyId }) => !spoke.has(companyId))
  const rows = [
    ...[...parts].map(([name, what]) => [name, [...what].join(', ')]),
    ...silent.map(({ companyName }) => [companyName, 'was asked and said nothing']),
  ]
  return [
    rows.length === 0
      ? makeEmptyPart(level1('14  Participants'), 'Nobody is recorded.')
      : makeTable(
          [
            { label: 'Who', width: 190 },
            { label: 'Part in the review', width: '*' },
          ],
          rows,
          level1('14  Participants'),
        ),
  ]
}
