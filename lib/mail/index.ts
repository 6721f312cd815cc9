/** Pure: which messages there are, what they say, and who is mentioned in a text. Sending is the server's. */
export {
  isMailKind,
  isOptionalMailKind,
  MAIL_KIND_LABELS,
  MAIL_KINDS,
  MAIL_STATES,
  type MailKind,
  type MailState,
  OPTIONAL_MAIL_KINDS,
  type OptionalMailKind,
} from './kinds'
export { findMentions, findTypedMention } from './mentions'
export {
  type AccountEvent,
  type ConditionEvent,
  composeMail,
  type MailNotice,
  type ProposalEvent,
  TOKEN_PLACE,
  type Wanted,
} from './notices'
export type { ReviewActionEvent } from './review-actions'
