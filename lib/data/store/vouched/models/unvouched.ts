import 'server-only'

/** Tables that no record vouches for, and why. */
export const UNVOUCHED_MODELS: Readonly<Record<string, string>> = {
  TrailRecord: 'the trail itself, which its own chain and the checkpoints hold together',
  TrailCheckpoint: 'signed one by one',
  Session: 'comes and goes with its browser; nobody is signed in for longer than it lasts',
  RecoveryCode: 'a secret of one person, and no way in without the password',
  OneTimeToken: 'good once, for some hours; what came of it is told by its own record',
  ResetRequest: 'the memory of a request for some days',
  IdempotencyKey: 'the memory of a request for some days',
  SignInAttempt: 'the memory of a failed sign-in for some minutes',
  RefusedSignIn: 'attempts of people whom nobody knows; kept for 400 days',
  MailMessage: 'what was sent is with the receiver; the state of sending changes by itself',
  DigestDay: 'the memory that a digest was dealt with',
  RevisionStanding: 'worked out from rows that are vouched for; nobody decides by it',
  RevisionWait: 'worked out from rows that are vouched for; nobody decides by it',
  AccessEvent: 'readings, which change nothing; kept for a set time',
  Job: 'work on the way, and results that nobody decided by; the person who asked may ask again',
}
