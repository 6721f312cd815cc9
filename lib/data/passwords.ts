import 'server-only'
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'

/**
 * Password hashing with scrypt (RFC 7914, 2016). Cost N = 2^17, r = 8, p = 1 needs 128 MiB per hash: what OWASP's
 * password storage guidance (2023) gives as its first choice of scrypt parameters.
 */
const COST = { logN: 17, r: 8, p: 1 } as const
const KEY_BYTES = 32
const SALT_BYTES = 16
/** Node refuses a hash that needs more than this; 128 * N * r is 128 MiB, and it asks for a little above it. */
const MAX_MEMORY_BYTES = 256 * 1024 * 1024
/** Two hashes at a time keep memory at a quarter of a gibibyte, however many people sign in at once. */
const MAX_AT_ONCE = 2

let running = 0
const waiting: (() => void)[] = []

async function inTurn<T>(run: () => Promise<T>): Promise<T> {
  if (running >= MAX_AT_ONCE) await new Promise<void>((resolve) => waiting.push(resolve))
  else running += 1
  try {
    return await run()
  } finally {
    const next = waiting.shift()
    // The place passes on to the one who waits, so `running` stays as it is.
    if (next === undefined) running -= 1
    else next()
  }
}

interface Cost {
  readonly logN: number
  readonly r: number
  readonly p: number
}

function derive(password: string, salt: Buffer, cost: Cost): Promise<Buffer> {
  // The same password typed on two keyboards can arrive in two Unicode forms (NIST SP 800-63B, 2017, section 5.1.1.2).
  const text = password.normalize('NFKC')
  const options = { N: 2 ** cost.logN, r: cost.r, p: cost.p, maxmem: MAX_MEMORY_BYTES }
  return inTurn(
    () =>
      new Promise<Buffer>((resolve, reject) => {
        scrypt(text, salt, KEY_BYTES, options, (error, key) => (error === null ? resolve(key) : reject(error)))
      }),
  )
}

/** @returns `scrypt$17$8$1$salt$key`, salt and key in base64url */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(SALT_BYTES)
  const key = await derive(password, salt, COST)
  return ['scrypt', COST.logN, COST.r, COST.p, salt.toString('base64url'), key.toString('base64url')].join('$')
}

/** Compares in constant time. Throws for a stored hash that is not of our form: that is damage, not a wrong password. */
export async function isPasswordRight(password: string, stored: string): Promise<boolean> {
  const [scheme, logN, r, p, salt, key] = stored.split('$')
  if (scheme !== 'scrypt' || salt === undefined || key === undefined)
    throw new Error('a stored password hash is damaged')
  const expected = Buffer.from(key, 'base64url')
  const found = await derive(password, Buffer.from(salt, 'base64url'), {
    logN: Number(logN),
    r: Number(r),
    p: Number(p),
  })
  return expected.length === found.length && timingSafeEqual(expected, found)
}

/** Takes as long as a real comparison: an unknown address must not answer faster than a wrong password. */
export async function spendPasswordTime(password: string): Promise<void> {
  await derive(password, Buffer.alloc(SALT_BYTES), COST)
}
