import type { Content } from 'pdfmake/interfaces'
import { DECLARATION_WORDS, listItemStates } from '@/lib/review'
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

interface Participant {
  readonly userId: string
  readonly name: string
  companyName: string
  readonly parts: Set<string>
}

/** Everybody who had a part, once each; then who was there and took none, people and fabricators. */
export function makeParticipants(content: PackageContent): Content[] {
  const { snapshot, members } = content
  const people = listParticipants(content)
  const companies = new Set(people.map(({ companyName }) => companyName))
  const known = new Set(people.map(({ userId }) => userId))
  const idle = members.filter(({ userId }) => !known.has(userId))
  const silent = snapshot.sharedWith.filter(({ companyName }) => !companies.has(companyName))
  const rows = [
    ...people.map(({ name, companyName, parts }) => [name, companyName, [...parts].join(', ')]),
    ...idle.map(({ name, companyName, role }) => [name, companyName, `${role}, without a part on record`]),
    ...silent.map(({ companyName }) => ['nobody', companyName, 'was asked; neither declared nor commented']),
  ]
  return [
    rows.length === 0
      ? makeEmptyPart(level1('14  Participants'), 'Nobody is recorded.')
      : makeTable(
          [
            { label: 'Who', width: 130 },
            { label: 'Company', width: 130 },
            { label: 'Part in the review', width: '*' },
          ],
          rows,
          level1('14  Participants'),
        ),
  ]
}

/** By account and not by name: two people may have one name. The company is known of who declared or commented, and of the company's own people. */
function listParticipants({ snapshot, release, members, workspaceName }: PackageContent): Participant[] {
  const people = new Map<string, Participant>()
  const companyOf = new Map(members.map(({ userId, companyName }) => [userId, companyName]))
  const add = (userId: string, name: string, part: string, companyName = ''): void => {
    const person = people.get(userId) ?? {
      userId,
      name,
      companyName: companyOf.get(userId) ?? '',
      parts: new Set<string>(),
    }
    if (companyName !== '') person.companyName = companyName
    people.set(userId, part === '' ? person : { ...person, parts: person.parts.add(part) })
  }
  for (const { userId, name, parts } of snapshot.authors)
    add(userId, name, `author of ${parts.join(' and ')}`, workspaceName)
  for (const { answer } of listItemStates(snapshot)) {
    if (answer !== null) add(answer.answeredBy, answer.answeredByName, 'answered items')
  }
  for (const { userId, name } of snapshot.editors) if (!people.has(userId)) add(userId, name, 'changed content')
  for (const { comments, closed } of snapshot.threads) {
    for (const comment of comments) add(comment.authorId, comment.authorName, 'commented', comment.companyName)
    if (closed !== null) add(closed.by, closed.byName, 'closed threads')
  }
  for (const { madeBy, madeByName, companyName, verdict } of snapshot.declarations) {
    add(madeBy, madeByName, `declared: ${DECLARATION_WORDS[verdict]}`, companyName)
  }
  for (const waiver of snapshot.waivers) {
    add(waiver.proposedBy, waiver.proposedByName, 'proposed waivers')
    if (waiver.decidedBy !== null) add(waiver.decidedBy, waiver.decidedByName ?? '', 'decided on waivers')
  }
  for (const { byId, byName } of snapshot.acknowledgements) add(byId, byName, 'let differences stand')
  for (const { ownerId, ownerName, ownerCompanyName } of snapshot.actions) {
    add(ownerId, ownerName, 'owns actions', ownerCompanyName)
  }
  for (const { userId, name, role, withdrawnAt } of snapshot.reviews) {
    if (withdrawnAt === null) add(userId, name, `reviewed as ${role}`, workspaceName)
  }
  for (const { userId, name, voided } of snapshot.signatures) {
    add(userId, name, voided === null ? 'signed' : 'signed, void since', workspaceName)
  }
  const releasedBy =
    release.byUserId ?? [...people].find(([, { name }]) => name === release.byName)?.[0] ?? release.byName
  add(releasedBy, release.byName, 'released', workspaceName)
  return [...people.values()]
}
