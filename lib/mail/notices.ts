import { DECLARATION_WORDS, type DeclarationVerdict, nameThreadKind, STAGE_LABELS, type Stage } from '@/lib/review'
import { type MailText, renderLetter } from './letter'
import { composeReviewActionMail, type ReviewActionNotice } from './review-actions'

/**
 * Stands for the token in a stored invitation: the link as it works is made at the moment of sending, so that the
 * database never holds it.
 */
export const TOKEN_PLACE = '{{token}}'

/** Where the thing is that a message is about. `null` for a name that the reader must not be told. */
export interface MailPlace {
  readonly projectName: string | null
  readonly revisionLabel: string | null
  /** Address of the page, whole. */
  readonly href: string
}

/** What the reader is asked to do. */
export interface Wanted {
  /** `answer it`: completes "Please". */
  readonly act: string
  /** YYYY-MM-DD, and what happens then, where something does; null where the brief states no date. */
  readonly until: { readonly date: string; readonly event: string | null } | null
}

export const PROPOSAL_EVENTS = ['made', 'accepted', 'declined', 'withdrawn'] as const
export type ProposalEvent = (typeof PROPOSAL_EVENTS)[number]

export type MailNotice =
  | {
      readonly kind: 'invitation'
      /** Null where it admits to the company alone. */
      readonly projectName: string | null
      readonly companyName: string
      readonly role: string
      readonly invitedBy: string
      /** Address with TOKEN_PLACE in it. */
      readonly href: string
      /** YYYY-MM-DD */
      readonly expiresOn: string
    }
  | {
      readonly kind: 'company-asked'
      /** Null for a name that the reader must not be told. */
      readonly projectName: string | null
      readonly companyName: string
      readonly by: string
      /** The company for which they ask; null for an admin who is not in the project. */
      readonly byCompany: string | null
      /** What is wanted: an administrator of the company decides; where it has none, an admin of the workspace names one. */
      readonly wanted: 'take-part' | 'bring-person' | 'name-administrator'
      /** The address of whom the project would like to see invited; empty where it named nobody. */
      readonly askedFor: string
      readonly href: string
    }
  | {
      readonly kind: 'query' | 'answer' | 'mention'
      readonly place: MailPlace
      readonly threadKind: string
      readonly title: string | null
      readonly anchor: string | null
      readonly by: string
      readonly text: string | null
      /** The reader is named as the one to answer. */
      readonly isAssigned?: boolean
      readonly wanted: Wanted | null
    }
  | {
      readonly kind: 'shared'
      readonly place: MailPlace
      readonly companyName: string
      readonly by: string
      readonly wanted: Wanted
    }
  | {
      readonly kind: 'declaration'
      readonly place: MailPlace
      readonly companyName: string
      readonly verdict: DeclarationVerdict
      readonly by: string
      readonly note: string
      /** Each as a line; without those that the reader must not see. */
      readonly conditions: readonly string[]
      readonly wanted: Wanted | null
    }
  | {
      readonly kind: 'condition'
      readonly place: MailPlace
      readonly event: ConditionEvent
      readonly companyName: string
      readonly by: string
      /** The condition; null for a company's part in the release, and where the reader must not see it. */
      readonly condition: string | null
      /** Why, what was changed, or what is to be done. */
      readonly text: string | null
      readonly wanted: Wanted | null
    }
  | {
      readonly kind: 'released'
      readonly place: MailPlace
      readonly by: string
      /** SHA-256 of the reader's own edition; null where there is none for them. */
      readonly packageSha256: string | null
    }
  | {
      readonly kind: 'proposal'
      readonly place: MailPlace
      readonly event: ProposalEvent
      readonly title: string | null
      readonly by: string
      /** What would change, a sentence each; without those that the reader must not see. */
      readonly changes: readonly string[]
      /** Why it was proposed, or decided so. */
      readonly text: string | null
      readonly mayDecide: boolean
      readonly wanted: Wanted | null
    }
  | ReviewActionNotice<MailPlace>
  | {
      readonly kind: 'stage'
      readonly place: MailPlace
      readonly from: Stage
      readonly to: Stage
      readonly by: string
      readonly reason: string | null
      readonly wanted: Wanted | null
    }
  | {
      readonly kind: 'signature-voided'
      readonly place: MailPlace
      readonly signer: string
      readonly by: string
      readonly reason: string
      readonly changes: readonly string[]
      readonly wanted: Wanted | null
    }
  | { readonly kind: 'password-reset'; readonly href: string; readonly expiresAt: string }
  | { readonly kind: 'address-change'; readonly name: string; readonly href: string; readonly expiresAt: string }
  | {
      readonly kind: 'account'
      readonly happened: AccountEvent
      /** Who did it, where it was not the person's own act. */
      readonly by: string | null
      readonly at: string
      readonly accountHref: string
    }
  | {
      readonly kind: 'digest'
      readonly accountHref: string
      readonly homeHref: string
      readonly waits: readonly { readonly text: string; readonly href: string }[]
    }

/** What was decided about a fabricator's condition, or its part in a release. */
export type ConditionEvent = 'taken-over' | 'declined' | 'action' | 'taken-off' | 'put-back'

interface ConditionWords {
  readonly subject: string
  /** What somebody did to a company, after their name. */
  readonly did: (company: string) => string
}

const CONDITION_EVENTS: Readonly<Record<ConditionEvent, ConditionWords>> = {
  'taken-over': { subject: 'condition taken over', did: (company) => `took over a condition of ${company}` },
  declined: { subject: 'condition declined', did: (company) => `declined a condition of ${company}` },
  action: {
    subject: 'condition turned into an action',
    did: (company) => `turned a condition of ${company} into an action`,
  },
  'taken-off': { subject: 'fabricator taken off this release', did: (company) => `took ${company} off this release` },
  'put-back': { subject: 'fabricator back on this release', did: (company) => `put ${company} back on this release` },
}

/** What was done to an account, of which its owner is told. */
export type AccountEvent =
  | 'password-reset'
  | 'reset-link'
  | 'address-change-asked'
  | 'address-changed'
  | 'second-factor-added'
  | 'second-factor-removed'
  | 'identity-linked'

const ACCOUNT_EVENTS: Readonly<Record<AccountEvent, { readonly subject: string; readonly sentence: string }>> = {
  'password-reset': {
    subject: 'Your password was reset',
    sentence: 'A new password was set through a link, and every device was signed out.',
  },
  'reset-link': {
    subject: 'A link to reset your password was made',
    sentence: 'A link was created that can be used once to set a new password.',
  },
  'address-change-asked': {
    subject: 'A new address was entered for your account',
    sentence: 'A new address was entered for your account. It takes effect once the link sent to it is confirmed.',
  },
  'address-changed': {
    subject: 'Your address was changed',
    sentence: 'Your account now has a new address, and messages go there. This is the last message to this address.',
  },
  'second-factor-added': {
    subject: 'Your account has a new way to sign in',
    sentence: 'A passkey or one-time codes were added to your account.',
  },
  'second-factor-removed': {
    subject: 'A second factor was removed',
    sentence: 'A passkey or the one-time codes were removed from your account.',
  },
  'identity-linked': {
    subject: 'Single sign-on was linked to your account',
    sentence: 'Your account was linked to an identity at the sign-in provider of this workspace.',
  },
}

/** `2026-11-28 16:20 UTC` */
const formatTime = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`

/** Everything in one sentence, so that a reader on a telephone sees it. */
function describeWanted(wanted: Wanted | null): string[] {
  if (wanted === null) return []
  const { act, until } = wanted
  return [
    until === null
      ? `Please ${act}. The brief states no date.`
      : `Please ${act} by ${until.date}${until.event === null ? '' : `, when ${until.event}`}.`,
  ]
}

const CHOICE = 'You can choose which messages you receive on your account page.'

/** The message about one thing to one person. */
export function composeMail(notice: MailNotice): MailText {
  switch (notice.kind) {
    case 'invitation':
      return renderLetter({
        subject:
          notice.projectName === null
            ? `Invitation to ${notice.companyName}`
            : `Invitation to the review of ${notice.projectName}`,
        paragraphs: [
          notice.projectName === null
            ? `${notice.invitedBy} invites you to join ${notice.companyName}.`
            : `${notice.invitedBy} invites you to ${notice.projectName}, as ${notice.role} for ${notice.companyName}.`,
          `The link works once, for this address, until ${notice.expiresOn}. Do not pass it on.`,
        ],
        act: { label: 'Accept the invitation', href: notice.href },
        footer: `If you do not know ${notice.invitedBy}, ignore this message: nothing will change.`,
      })
    case 'company-asked':
      return composeRequestMail(notice)
    case 'query':
    case 'answer':
    case 'mention':
      return composeThreadMail(notice)
    case 'proposal':
      return composeProposalMail(notice)
    case 'action':
      return composeReviewActionMail(notice, nameOf(notice.place), CHOICE)
    case 'shared':
      return renderLetter({
        subject: `${nameOf(notice.place)}: shared with ${notice.companyName}`,
        paragraphs: [
          `${notice.by} shared ${nameOf(notice.place)} with ${notice.companyName}: its construction, bends, artwork and drawing, and your company’s part of the review.`,
          ...describeWanted(notice.wanted),
        ],
        act: { label: 'Open the revision', href: notice.place.href },
        footer: CHOICE,
      })
    case 'declaration':
      return renderLetter({
        subject: `${nameOf(notice.place)}: ${notice.companyName} declares it ${DECLARATION_WORDS[notice.verdict]}`,
        paragraphs: [
          `${notice.by} declared for ${notice.companyName} that ${nameOf(notice.place)} is ${DECLARATION_WORDS[notice.verdict]}${notice.verdict === 'with-conditions' ? '' : ' as it stands'}.`,
          ...describeWanted(notice.wanted),
        ],
        quote: notice.conditions.length > 0 ? notice.conditions.join('\n') : notice.note,
        act: { label: 'Open the declaration', href: notice.place.href },
        footer: CHOICE,
      })
    case 'condition':
      return renderLetter({
        subject: `${nameOf(notice.place)}: ${CONDITION_EVENTS[notice.event].subject}`,
        paragraphs: [
          `${notice.by} ${CONDITION_EVENTS[notice.event].did(notice.companyName)}${notice.condition === null ? '.' : `: ${notice.condition}.`}`,
          ...describeWanted(notice.wanted),
        ],
        quote: notice.text,
        act: { label: 'Open the revision', href: notice.place.href },
        footer: CHOICE,
      })
    case 'released':
      return composeReleaseMail(notice)
    case 'stage':
      return renderLetter({
        subject: `${nameOf(notice.place)}: ${STAGE_LABELS[notice.to]}`,
        paragraphs: [
          `${notice.by} moved ${nameOf(notice.place)} from "${STAGE_LABELS[notice.from]}" to "${STAGE_LABELS[notice.to]}".`,
          ...describeWanted(notice.wanted),
        ],
        quote: notice.reason,
        act: { label: 'Open the revision', href: notice.place.href },
        footer: CHOICE,
      })
    case 'signature-voided':
      return renderLetter({
        subject: `${nameOf(notice.place)}: the signature of ${notice.signer} is void`,
        paragraphs: [
          `The signature of ${notice.signer} on ${nameOf(notice.place)} is no longer valid: ${notice.reason}.`,
          `${notice.by} made a change that voided it. The revision needs a new signature on its current content.`,
          ...describeWanted(notice.wanted),
        ],
        quote: notice.changes.length === 0 ? null : notice.changes.join('\n'),
        act: { label: 'See what changed', href: notice.place.href },
        footer: CHOICE,
      })
    case 'password-reset':
      return renderLetter({
        subject: 'Reset your password',
        paragraphs: [
          'Somebody requested a link to set a new password for the account with this address.',
          `The link works once, until ${formatTime(notice.expiresAt)}. Setting a new password signs out every device.`,
        ],
        act: { label: 'Set a new password', href: notice.href },
        footer: 'If you did not ask for it, ignore this message: nothing will change.',
      })
    case 'address-change':
      return renderLetter({
        subject: 'Confirm your new address',
        paragraphs: [
          `${notice.name} asked to use this address for their account.`,
          `The link works once, until ${formatTime(notice.expiresAt)}.`,
        ],
        act: { label: 'Confirm the address', href: notice.href },
        footer: 'If you did not ask for this, ignore this message: nothing will change.',
      })
    case 'account': {
      const { subject, sentence } = ACCOUNT_EVENTS[notice.happened]
      return renderLetter({
        subject,
        paragraphs: [
          `${sentence} (${formatTime(notice.at)}${notice.by === null ? '' : `, by ${notice.by}`})`,
          'If you did not expect this, tell an administrator of the workspace at once.',
        ],
        act: { label: 'Your account', href: notice.accountHref },
        footer: 'Sent because it concerns the security of your account. These messages cannot be switched off.',
      })
    }
    case 'digest':
      return renderLetter({
        subject:
          notice.waits.length === 1
            ? 'One item is waiting for you'
            : `${notice.waits.length} items are waiting for you`,
        paragraphs: ['Oldest first:'],
        list: notice.waits,
        act: { label: 'Waiting for me', href: notice.homeHref },
        footer: `Sent once a day while something is waiting. To stop these messages: ${notice.accountHref}`,
      })
  }
}

function composeRequestMail(notice: Extract<MailNotice, { kind: 'company-asked' }>): MailText {
  const { by, byCompany, companyName, wanted, askedFor, href } = notice
  const project = notice.projectName === null ? 'a project' : `the project ${notice.projectName}`
  const person = askedFor === '' ? 'somebody' : askedFor
  const asked = wanted === 'bring-person' ? `to bring ${person} into ${project}` : `to take part in ${project}`
  const acts = {
    'take-part': {
      sentence: `Please decide whether ${companyName} takes part. Until then the project sees nothing of it. Once it takes part, the project sees what you have chosen to share with new projects; you can change this for each project.`,
      label: 'Answer the request',
    },
    'bring-person': {
      sentence: `Please bring ${person}, or somebody else from ${companyName}, into the project. The company already takes part.`,
      label: 'Open the company’s page',
    },
    'name-administrator': {
      sentence: `Please name an administrator of ${companyName}. It has none, so nobody can answer for it.`,
      label: 'Open the list of companies',
    },
  }[wanted]
  return renderLetter({
    subject: `${notice.projectName ?? 'A project'} asks ${companyName} ${wanted === 'bring-person' ? `for ${person}` : 'to take part'}`,
    paragraphs: [
      `${by}${byCompany === null ? ', an admin of the workspace,' : ` of ${byCompany}`} asks ${companyName} ${asked}.`,
      ...(wanted !== 'bring-person' && askedFor !== '' ? [`They would like to work with ${askedFor}.`] : []),
      acts.sentence,
    ],
    act: { label: acts.label, href },
    footer: CHOICE,
  })
}

const THREAD_LEAD = { query: 'asks', answer: 'answered', mention: 'mentions you' } as const

function composeThreadMail(notice: Extract<MailNotice, { kind: 'query' | 'answer' | 'mention' }>): MailText {
  const thing = nameThreadKind(notice.threadKind)
  const title = notice.title === null ? thing : `${thing} "${notice.title}"`
  const on = notice.anchor === null ? '' : `, on ${notice.anchor}`
  const lead = {
    query:
      notice.isAssigned === true
        ? `${notice.by} asks you to answer the ${title}${on}, in ${nameOf(notice.place)}.`
        : `${notice.by} opened the ${title}${on}, in ${nameOf(notice.place)}.`,
    answer: `${notice.by} answered the ${title}${on}, in ${nameOf(notice.place)}.`,
    mention: `${notice.by} mentions you in the ${title}${on}, in ${nameOf(notice.place)}.`,
  }[notice.kind]
  return renderLetter({
    subject: `${nameOf(notice.place)}: ${notice.by} ${THREAD_LEAD[notice.kind]}${notice.title === null ? '' : `: ${notice.title}`}`,
    paragraphs: [lead, ...describeWanted(notice.wanted)],
    quote: notice.text,
    act: { label: 'Open the thread', href: notice.place.href },
    footer: CHOICE,
  })
}

function composeReleaseMail({ place, by, packageSha256 }: Extract<MailNotice, { kind: 'released' }>): MailText {
  return renderLetter({
    subject: `${nameOf(place)}: released`,
    paragraphs: [
      `${by} released ${nameOf(place)}.`,
      ...(packageSha256 === null
        ? []
        : [
            `SHA-256 of your package: ${packageSha256}`,
            'Compare it with what you download (sha256sum package.zip). The README.txt in the package explains how to check each file and the signature.',
          ]),
    ],
    act: { label: packageSha256 === null ? 'Open the revision' : 'Download the package', href: place.href },
    footer: CHOICE,
  })
}

const PROPOSAL_VERBS = { made: 'proposes', accepted: 'accepted', declined: 'declined', withdrawn: 'withdrew' } as const
const MOST_CHANGES = 8

function composeProposalMail(notice: Extract<MailNotice, { kind: 'proposal' }>): MailText {
  const { event, title, by, changes, place } = notice
  const thing = `${event === 'made' ? 'a change' : 'the proposed change'}${title === null ? '' : ` "${title}"`}`
  const more = changes.length - MOST_CHANGES
  const listed = `${changes.slice(0, MOST_CHANGES).join('; ')}${more > 0 ? `; and ${more} more` : ''}`
  return renderLetter({
    subject: `${nameOf(place)}: ${by} ${PROPOSAL_VERBS[event]} ${thing}`,
    paragraphs: [
      `${by} ${PROPOSAL_VERBS[event]} ${thing}, in ${nameOf(place)}.`,
      ...(changes.length === 0 ? [] : [`${event === 'made' ? 'It would change' : 'It concerned'}: ${listed}.`]),
      ...describeWanted(notice.wanted),
    ],
    quote: notice.text,
    act: { label: notice.mayDecide ? 'Accept or decline it' : 'Open the proposal', href: place.href },
    footer: CHOICE,
  })
}

function nameOf({ projectName, revisionLabel }: MailPlace): string {
  if (projectName === null) return 'a revision that is shared with you'
  return revisionLabel === null ? projectName : `${projectName} ${revisionLabel}`
}
