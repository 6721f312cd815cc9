import { asFileSize } from '@/lib/engine/units'

/** What is answered to a request that is turned away before it is read: the server writes it, forms know it again. */
export const DOOR_TEXTS = {
  signedOut:
    'You are signed out: the session ended or was ended elsewhere. Sign in again; what you typed is still here.',
  tooLarge: (bytes: number, mostBytes: number) =>
    `This is ${asFileSize(bytes)}; at most ${asFileSize(mostBytes)} can be sent at once.`,
  tooDeep: (levels: number) => `The request is nested more than ${levels} levels deep.`,
} as const

const FORMS: readonly RegExp[] = [
  /^You are signed out: /,
  /^This is [\d.]+ [KM]iB; at most [\d.]+ [KM]iB can be sent at once\.$/,
  /^The request is nested more than \d+ levels deep\.$/,
]

export function isDoorText(text: string): boolean {
  return FORMS.some((form) => form.test(text))
}
