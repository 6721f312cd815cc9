import type { Content } from 'pdfmake/interfaces'
import { countOf } from '@/lib/engine/units'
import {
  callAnchor,
  describeDone,
  listItemStates,
  nameThreadKind,
  type ReviewComment,
  type ReviewThread,
} from '@/lib/review'
import type { PackageContent } from '../content'
import { keepTogether, level1, makeEmptyPart, makeTable, mono } from './style'
import { listWaiverTerms } from './waiver-terms'
import { asSentence, formatTime, formatWord } from './words'

export function makeWaivers({ snapshot }: PackageContent): Content[] {
  const questions = new Map(snapshot.items.map(({ id, question }) => [id, question]))
  const counting = new Set(
    listItemStates(snapshot).flatMap(({ state, waiver }) => (state === 'waived' && waiver !== null ? [waiver.id] : [])),
  )
  return [
    snapshot.waivers.length === 0
      ? makeEmptyPart(level1('7  Waivers'), 'No waiver was proposed.')
      : makeTable(
          [
            { label: 'Item and reason', width: '*' },
            { label: 'Proposed', width: 110 },
            { label: 'Decided', width: 110 },
            { label: 'State', width: 52 },
          ],
          snapshot.waivers.map((waiver) => [
            {
              stack: [
                { text: questions.get(waiver.itemId) ?? waiver.itemId, bold: true },
                [asSentence(waiver.reason), ...listWaiverTerms(waiver)].join(' '),
              ],
            },
            `${waiver.proposedByName}, ${formatTime(waiver.proposedAt)}`,
            waiver.decidedAt === null
              ? 'not decided'
              : {
                  stack: [
                    `${waiver.decidedByName ?? ''}, ${formatTime(waiver.decidedAt)}`,
                    ...(waiver.decisionNote === '' ? [] : [{ text: waiver.decisionNote, style: 'small' }]),
                  ],
                },
            // What it was approved for is not what stands there now.
            waiver.state === 'approved' && !counting.has(waiver.id)
              ? 'approved, counts no longer'
              : formatWord(waiver.state),
          ]),
          level1('7  Waivers'),
        ),
  ]
}

export function makeThreads({ snapshot }: PackageContent): Content[] {
  return [
    ...(snapshot.threads.length === 0
      ? [makeEmptyPart(level1('8  Comments and engineering queries'), 'No thread was opened.')]
      : snapshot.threads.flatMap((thread, index) => makeThread(thread, index === 0))),
  ]
}

function makeThread(thread: ReviewThread, isFirst: boolean): Content[] {
  const anchor =
    thread.anchor.kind === 'revision' ? 'whole revision' : callAnchor(thread.anchor.kind, thread.anchor.label)
  const head: Content[] = [
    ...(isFirst ? [{ text: '8  Comments and engineering queries', style: 'section' }] : []),
    { text: thread.title, style: 'subsection' },
    {
      text: `${formatWord(thread.kind)}, ${thread.state}; on ${anchor}; opened by ${thread.openedByName}, ${thread.openedByCompanyName}, ${formatTime(thread.openedAt)}`,
      style: 'small',
    },
  ]
  const [first, ...others] = thread.comments.map(makeComment)
  return [keepTogether(first === undefined ? head : [...head, first]), ...others, ...makeClosing(thread)]
}

/** How a thread was settled: what a reader would otherwise have to believe. */
function makeClosing({ kind, closed }: ReviewThread): Content[] {
  if (closed === null) return []
  const words = [
    `Closed by ${closed.byName}, ${formatTime(closed.at)}`,
    ...(closed.reason === '' ? [] : [closed.reason]),
    closed.done === null
      ? `What was done about the ${nameThreadKind(kind)} is not on record`
      : describeDone(closed.done),
  ]
  // A note, or a change that was only advised, is closed without more.
  const isAsked = kind === 'must-change' || kind === 'engineering-query'
  const said = isAsked || closed.done !== null ? words : words.slice(0, -1)
  return [{ text: said.map(asSentence).join(' '), style: 'small', margin: [10, 0, 0, 3] }]
}

function makeComment(comment: ReviewComment): Content {
  const files = comment.attachments.map(({ fileName, sha256 }) => `${fileName} (SHA-256 ${sha256.slice(0, 16)}…)`)
  const edited = comment.editedAt === null ? '' : `, edited ${formatTime(comment.editedAt)}`
  return {
    stack: [
      { text: `${comment.authorName}, ${comment.companyName}, ${formatTime(comment.at)}${edited}`, style: 'label' },
      comment.text,
      ...(files.length === 0 ? [] : [{ text: `Attached: ${files.join(', ')}`, style: 'small' }]),
    ],
    margin: [10, 3, 0, 3],
  }
}

export function makeSignatures({ snapshot }: PackageContent): Content[] {
  return [
    ...(snapshot.signatures.length === 0
      ? [makeEmptyPart(level1('11  Signatures'), 'The revision has no signature.')]
      : snapshot.signatures.map(
          (signature, index): Content => ({
            ...keepTogether([
              ...(index === 0 ? [{ text: '11  Signatures', style: 'section' }] : []),
              { text: `${signature.name}, ${signature.capacity}`, bold: true },
              { text: `${formatTime(signature.signedAt)}${signature.voided === null ? '' : '   VOID'}`, style: 'soft' },
              ...(signature.grant === undefined
                ? []
                : [
                    {
                      text: `Capacity granted by ${signature.grant.grantedByName}, ${formatTime(signature.grant.grantedAt)}: ${signature.grant.statement}`,
                      style: 'small',
                    },
                  ]),
              { text: `“${signature.statement}”`, margin: [0, 2, 0, 2] },
              mono(`SHA-256 ${signature.contentHash}`),
              ...(signature.voided === null
                ? []
                : [
                    {
                      text: `Voided ${formatTime(signature.voided.at)}: ${signature.voided.reason}. ${signature.voided.changes.join('; ')}`,
                      style: 'small',
                    },
                  ]),
            ]),
            margin: [0, 3, 0, 7],
          }),
        )),
  ]
}

/** What each file is for and what says so; where files contradict the design stands with the item of the checklist. */
function makeArtworkRoles(facts: PackageContent['snapshot']['artworkFacts'] | null): Content[] {
  if (facts == null) return [{ text: 'The files have not been read: nothing is known of what they say.' }]
  return [
    makeTable(
      [
        { label: 'File, or file in an archive', width: 150 },
        { label: 'Role', width: 110 },
        { label: 'Reason', width: '*' },
        { label: 'Not read whole', width: 60 },
      ],
      facts.files.map(({ name, role, unreadReason, errorCount }) => [
        name,
        [role.role ?? 'not known', role.side ?? '', role.layerNumber === null ? '' : `layer ${role.layerNumber}`]
          .filter((word) => word !== '')
          .join(', '),
        unreadReason ?? role.reason,
        errorCount === 0 ? '' : countOf(errorCount, 'place'),
      ]),
    ),
    ...facts.refused.map(({ name, reason }): Content => ({ text: `${name} was refused: ${reason}.` })),
  ]
}

export function makeArtwork({ snapshot }: PackageContent): Content[] {
  return [
    snapshot.artwork.length === 0
      ? makeEmptyPart(level1('12  Artwork'), 'No artwork was uploaded.')
      : makeTable(
          [
            { label: 'File', width: 150 },
            { label: 'Bytes', width: 56, isNumeric: true },
            { label: 'SHA-256', width: '*' },
          ],
          snapshot.artwork.map((file) => [file.fileName, String(file.sizeBytes), mono(file.sha256)]),
          level1('12  Artwork'),
        ),
    ...(snapshot.artwork.length === 0 ? [] : makeArtworkRoles(snapshot.artworkFacts ?? null)),
  ]
}
