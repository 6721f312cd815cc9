import type { Content } from 'pdfmake/interfaces'
import {
  type Author,
  listDifferences,
  listLoosenedUses,
  listReviewPolicyRows,
  listReviews,
  type ReviewSnapshot,
} from '@/lib/review'
import type { PackageContent } from '../content'
import { level2, makeEmptyPart, makeFacts, makeTable } from './style'
import { asSentence, formatTime } from './words'

type Fact = readonly [label: string, text: string]

/** A policy looser than usual that was made use of, for the head of the report; who did what stands with the decision. */
export function listLoosenedFacts({ snapshot, release }: PackageContent): Fact[] {
  const uses = listLoosenedUses(snapshot, release.byUserId ?? null)
  if (uses.length === 0) return []
  const [first = '', ...others] = uses
  const more = others.length === 0 ? '' : `; and ${others.length} more in the part on signatures`
  return [['Sign-off policy', `looser than usual, and used: ${first}${more}`]]
}

/** Authors with what they changed, statements of review, and the policy that all of it went by. */
export function makeIndependence({ snapshot, release }: PackageContent): Content[] {
  const counting = new Set(listReviews(snapshot).map(({ id }) => id))
  const uses = listLoosenedUses(snapshot, release.byUserId ?? null)
  return [
    snapshot.authors.length === 0
      ? makeEmptyPart(level2('Authors of design and artwork'), 'Nobody is on record.')
      : makeTable(
          [
            { label: 'Author', width: 150 },
            { label: 'Of', width: 110 },
            { label: 'Changes in this revision', width: '*' },
          ],
          snapshot.authors.map((author) => [author.name, author.parts.join(', '), describeChanges(author)]),
          level2('Authors of design and artwork'),
        ),
    snapshot.reviews.length === 0
      ? makeEmptyPart(level2('Review'), 'Nobody declared the content reviewed.')
      : makeTable(
          [
            { label: 'Reviewer', width: 150 },
            { label: 'What they looked at', width: '*' },
            { label: 'Counts', width: 90 },
          ],
          snapshot.reviews.map((review) => [
            `${review.name}, ${review.role}, ${formatTime(review.madeAt)}`,
            review.note,
            review.withdrawnAt !== null ? 'withdrawn' : counting.has(review.id) ? 'yes' : 'no: earlier content',
          ]),
          level2('Review'),
        ),
    makePolicy(snapshot),
    makeDifferences(snapshot),
    ...(uses.length === 0
      ? []
      : [
          makeTable(
            [{ label: 'What it allowed', width: '*' }],
            uses.map((use) => [use]),
            level2('Looser than usual'),
          ),
        ]),
  ]
}

/** Where words differ from numbers, with who let it stand and why. */
function makeDifferences(snapshot: ReviewSnapshot): Content {
  const title = level2('Words against numbers')
  const differences = listDifferences(snapshot)
  if (differences.length === 0)
    return makeEmptyPart(title, 'Remarks and answers agree with what is stated and computed.')
  return makeTable(
    [
      { label: 'Fact', width: 110 },
      { label: 'Said', width: '*' },
      { label: 'Against it', width: 140 },
      { label: 'Why it stands', width: 140 },
    ],
    differences.map(({ fact, said, against, acknowledged, isDecidedInChecklist }) => [
      fact,
      said,
      against,
      acknowledged === null
        ? isDecidedInChecklist
          ? 'decided in the checklist'
          : 'nobody let it stand; the policy only lists it'
        : `${asSentence(acknowledged.reason)} ${acknowledged.byName}, ${formatTime(acknowledged.at)}`,
    ]),
    title,
  )
}

function describeChanges({ changes }: Author): string {
  if (changes === null) return 'none of their own: began it, or came with the copy'
  const { count, firstVersion, lastVersion } = changes
  return firstVersion === lastVersion
    ? `${count}, in version ${firstVersion}`
    : `${count}, from version ${firstVersion} to ${lastVersion}`
}

function makePolicy(snapshot: ReviewSnapshot): Content {
  const { signOffPolicy } = snapshot
  if (signOffPolicy === null) {
    return makeEmptyPart(level2('Sign-off policy'), 'The review began before there were sign-off policies.')
  }
  return makeFacts(
    listReviewPolicyRows(snapshot).map(
      ({ label, words, isLoosened }) => [label, isLoosened ? `${words} (looser than usual)` : words] as const,
    ),
    level2(`Sign-off policy, ${signOffPolicy.version === 0 ? 'as delivered' : `version ${signOffPolicy.version}`}`),
  )
}
