import 'server-only'
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'
import { isProduction } from '@/lib/config'
import { refuseBusy } from '../store/errors'

/**
 * Password hashing with scrypt (RFC 7914, 2016). Cost N = 2^17, r = 8, p = 1 needs 128 MiB per hash: what OWASP's
 * password storage guidance (2023) gives as its first choice of scrypt parameters.
 */
const COST: Cost = { logN: 17, r: 8, p: 1 }
let cost = COST
const KEY_BYTES = 32
const SALT_BYTES = 16
/** Node refuses a hash that needs more than this; 128 * N * r is 128 MiB, and it asks for a little above it. */
const MAX_MEMORY_BYTES = 256 * 1024 * 1024

/**
 * For whom a password is hashed. `known` is somebody signed in, or on a device where they have signed in before; anybody
 * else is a stranger from one address, and strangers together get one place less.
 */
export type HashTurn = 'known' | { readonly sourceKey: string }

/** Two hashes at a time keep memory at a quarter of a gibibyte, however many people sign in at once. */
const MAX_AT_ONCE = 2
/** A hash takes about half a second, so the person who waits longest waits about as many half seconds. */
const MAX_WAITING_KNOWN = 16
const MAX_WAITING_STRANGERS = 8
/** One address cannot hold every place that strangers have. */
const MAX_WAITING_PER_SOURCE = 4

/** Who is between the door and the answer: a crowd is turned away before it takes a connection of the database. */
const inside = { known: 0, strangers: new Map<string, number>() }

/**
 * Runs a sign-in if there is room for it.
 * @throws RefusalError at once, when there is none
 */
export async function atTheDoor<T>(turn: HashTurn, run: () => Promise<T>): Promise<T> {
  const count = (change: 1 | -1) => {
    if (turn === 'known') inside.known += change
    else {
      const left = (inside.strangers.get(turn.sourceKey) ?? 0) + change
      if (left === 0) inside.strangers.delete(turn.sourceKey)
      else inside.strangers.set(turn.sourceKey, left)
    }
  }
  const strangers = [...inside.strangers.values()].reduce((sum, each) => sum + each, 0)
  const isFull =
    turn === 'known'
      ? inside.known >= MAX_AT_ONCE + MAX_WAITING_KNOWN
      : strangers > MAX_WAITING_STRANGERS || (inside.strangers.get(turn.sourceKey) ?? 0) > MAX_WAITING_PER_SOURCE
  if (isFull) refuseBusy(BUSY)
  count(1)
  try {
    return await run()
  } finally {
    count(-1)
  }
}

const BUSY = 'Too many people are signing in right now. Try again in a few seconds.'

interface Waiting {
  readonly turn: HashTurn
  readonly go: () => void
}

const running = { known: 0, strangers: 0 }
const waitingKnown: Waiting[] = []
const waitingStrangers: Waiting[] = []

function mayRun(turn: HashTurn): boolean {
  if (running.known + running.strangers >= MAX_AT_ONCE) return false
  return turn === 'known' || running.strangers < MAX_AT_ONCE - 1
}

function requirePlace(turn: HashTurn): void {
  const isFull =
    turn === 'known'
      ? waitingKnown.length >= MAX_WAITING_KNOWN
      : waitingStrangers.length >= MAX_WAITING_STRANGERS ||
        waitingStrangers.filter((other) => other.turn !== 'known' && other.turn.sourceKey === turn.sourceKey).length >=
          MAX_WAITING_PER_SOURCE
  if (isFull) refuseBusy(BUSY)
}

/** @throws RefusalError at once, when too many wait already */
async function inTurn<T>(turn: HashTurn, run: () => Promise<T>): Promise<T> {
  const kind = turn === 'known' ? 'known' : 'strangers'
  const queue = turn === 'known' ? waitingKnown : waitingStrangers
  if (queue.length === 0 && mayRun(turn)) running[kind] += 1
  else {
    requirePlace(turn)
    // Anyone who calls `go` has counted the place already.
    await new Promise<void>((resolve) => queue.push({ turn, go: resolve }))
  }
  try {
    return await run()
  } finally {
    running[kind] -= 1
    startNext()
  }
}

/** People who are known go first. */
function startNext(): void {
  for (const [kind, queue] of [
    ['known', waitingKnown],
    ['strangers', waitingStrangers],
  ] as const) {
    let next = queue[0]
    while (next !== undefined && mayRun(next.turn)) {
      queue.shift()
      running[kind] += 1
      next.go()
      next = queue[0]
    }
  }
}

interface Cost {
  readonly logN: number
  readonly r: number
  readonly p: number
}

function derive(password: string, salt: Buffer, { logN, r, p }: Cost, turn: HashTurn): Promise<Buffer> {
  // The same password typed on two keyboards can arrive in two Unicode forms (NIST SP 800-63B, 2017, section 5.1.1.2).
  const text = password.normalize('NFKC')
  const options = { N: 2 ** logN, r, p, maxmem: MAX_MEMORY_BYTES }
  return inTurn(
    turn,
    () =>
      new Promise<Buffer>((resolve, reject) => {
        scrypt(text, salt, KEY_BYTES, options, (error, key) => (error === null ? resolve(key) : reject(error)))
      }),
  )
}

/**
 * Hash at another cost until the returned function is called: tests hash hundreds of passwords of invented people.
 * @param logN  null for the cost above
 * @throws Error  in production, where every stored hash has to have the full cost
 */
export function replacePasswordCost(logN: number | null): () => void {
  if (isProduction()) throw new Error('passwords are hashed at full cost in production')
  const before = cost
  cost = logN === null ? COST : { ...COST, logN }
  return () => {
    cost = before
  }
}

/** @returns `scrypt$17$8$1$salt$key`, salt and key in base64url */
export async function hashPassword(password: string, turn: HashTurn): Promise<string> {
  const salt = randomBytes(SALT_BYTES)
  const used = cost
  const key = await derive(password, salt, used, turn)
  return ['scrypt', used.logN, used.r, used.p, salt.toString('base64url'), key.toString('base64url')].join('$')
}

/** Compares in constant time. Throws for a stored hash that is not of our form: that is damage, not a wrong password. */
export async function isPasswordRight(password: string, stored: string, turn: HashTurn): Promise<boolean> {
  const [scheme, logN, r, p, salt, key] = stored.split('$')
  if (scheme !== 'scrypt' || salt === undefined || key === undefined)
    throw new Error('a stored password hash is damaged')
  const expected = Buffer.from(key, 'base64url')
  const own = { logN: Number(logN), r: Number(r), p: Number(p) }
  const found = await derive(password, Buffer.from(salt, 'base64url'), own, turn)
  return expected.length === found.length && timingSafeEqual(expected, found)
}

/** Takes as long as a real comparison: an unknown address must not answer faster than a wrong password. */
export async function spendPasswordTime(password: string, turn: HashTurn): Promise<void> {
  await derive(password, Buffer.alloc(SALT_BYTES), cost, turn)
}
