import 'server-only'
import { dictionary } from '@zxcvbn-ts/language-common'
import { refuseField } from '../store/errors'

/**
 * What a new password may not be, wherever one is set; its length is the input schema's. After NIST SP 800-63B (2017),
 * 5.1.1.2: compared with passwords in common use, with plain sequences and repetitions, and with what is known of the
 * person. Rules of composition are left out on purpose, as that text advises.
 */
export function requireGoodPassword(
  field: string,
  password: string,
  person: { readonly name: string; readonly email: string },
): void {
  const fault = findPasswordFault(password, person)
  if (fault !== null) refuseField(field, 'weak', fault)
}

/** A repeated or well-known part must leave this much of its own. */
const LEAST_OWN_CHARACTERS = 8
const LEAST_DIFFERENT_CHARACTERS = 5
/** Shorter parts of a name are in too many words to mean the person. */
const LEAST_PART = 3
const PRODUCT_NAME = 'bendworthy'

const SEQUENCES = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890',
  'qwertyuiopasdfghjklzxcvbnm',
  'qwertzuiopasdfghjklyxcvbnm',
  'azertyuiopqsdfghjklmwxcvbn',
  '1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik9ol0p',
  'q1w2e3r4t5y6u7i8o9p0',
]

let commonPasswords: ReadonlySet<string> | undefined

/** 49,000 passwords in common use, most used first in the package's list (MIT). Loaded on first use. */
function isCommon(text: string): boolean {
  commonPasswords ??= new Set(dictionary['passwords-common'])
  return commonPasswords.has(text)
}

/** @returns what is wrong with it, as a sentence without its subject, or null */
export function findPasswordFault(
  password: string,
  person: { readonly name: string; readonly email: string },
): string | null {
  const text = password.normalize('NFKC').toLowerCase()
  const plain = text.replaceAll(/[^\p{L}\p{N}]/gu, '')
  if ([text, plain].some((form) => isCommon(form) || isCommonWithMore(form) || isCommonRepeated(form))) {
    return 'is a common password, or one with little added to it'
  }
  if (new Set(text).size < LEAST_DIFFERENT_CHARACTERS) return 'repeats too few different characters'
  if (isSequence(plain)) return 'is a plain sequence of keys'
  if (isMostlyPersonal(plain, person)) return 'is made mostly of your own name or address'
  return null
}

function isCommonWithMore(text: string): boolean {
  const core = text.replaceAll(/^[^\p{L}]+|[^\p{L}]+$/gu, '')
  return core.length >= 4 && text.length - core.length < LEAST_OWN_CHARACTERS && isCommon(core)
}

function isCommonRepeated(text: string): boolean {
  const unit = /^(.{2,}?)\1+$/u.exec(text)?.[1]
  return unit !== undefined && (isCommon(unit) || unit.length < LEAST_OWN_CHARACTERS)
}

function isSequence(plain: string): boolean {
  if (plain === '') return false
  return SEQUENCES.some((sequence) => {
    const forth = sequence.repeat(Math.ceil(plain.length / sequence.length) + 1)
    return forth.includes(plain) || [...forth].reverse().join('').includes(plain)
  })
}

function isMostlyPersonal(plain: string, { name, email }: { readonly name: string; readonly email: string }): boolean {
  const parts = [
    PRODUCT_NAME,
    ...`${name} ${email}`
      .normalize('NFKC')
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u),
  ]
  const known = parts.filter((part) => part.length >= LEAST_PART).toSorted((a, b) => b.length - a.length)
  const rest = known.reduce((left, part) => left.replaceAll(part, ''), plain)
  return rest.length < plain.length && rest.length < LEAST_OWN_CHARACTERS
}
