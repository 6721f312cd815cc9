import { describe, expect, it } from 'vitest'
import { explainError } from '@/lib/server/expected-errors'
import { FairTurns, NoTurnError } from '@/lib/server/fair-turns'
import { PageTurn } from '@/lib/server/page-turn'
import { Places } from '@/lib/server/places'

const LIMITS = { atOnce: 1, mostOfOne: 24, mostInAll: 60 }
/** Past the next look at who waits, which comes after whatever is due already. */
const settle = async () => {
  for (let round = 0; round < 3; round += 1) await new Promise((resolve) => setImmediate(resolve))
}

/** Work that ends when it is told to, and notes who had a turn. */
function makeWork(turns: FairTurns) {
  const order: string[] = []
  const ends: (() => void)[] = []
  const ask = (personId: string, signal?: AbortSignal) => {
    const asked = turns.run(
      personId,
      async () => {
        order.push(personId)
        await new Promise<void>((resolve) => ends.push(resolve))
      },
      signal,
    )
    asked.catch(() => {})
    return asked
  }
  const endOne = async () => {
    ends.shift()?.()
    await settle()
  }
  return { order, ask, endOne }
}

describe('turns', () => {
  it('of somebody who asks once come next, however many another has on the way', async () => {
    const { order, ask, endOne } = makeWork(new FairTurns(LIMITS))
    for (let count = 0; count < 20; count++) ask('ines')
    await settle()
    await endOne()
    await endOne()
    ask('tomas')
    await endOne()
    expect(order).toEqual(['ines', 'ines', 'ines', 'tomas'])
  })

  it('go round between those who have several waiting', async () => {
    const { order, ask, endOne } = makeWork(new FairTurns(LIMITS))
    for (const person of ['a', 'a', 'a', 'b', 'b', 'c']) ask(person)
    for (let count = 0; count < 6; count++) await endOne()
    expect(order.join('')).toBe('abcaba')
  })

  it('are bounded for one, and in all, with words and a status of their own', async () => {
    const { ask } = makeWork(new FairTurns({ atOnce: 1, mostOfOne: 2, mostInAll: 3 }))
    ask('a')
    ask('a')
    await expect(ask('a')).rejects.toMatchObject({ refusal: { kind: 'too-many' } })
    ask('b')
    await expect(ask('c')).rejects.toMatchObject({ refusal: { kind: 'busy' } })
    await expect(ask('c')).rejects.toThrow(NoTurnError)
  })

  it('are free again after work that failed, and after somebody who went away', async () => {
    const turns = new FairTurns({ atOnce: 1, mostOfOne: 2, mostInAll: 2 })
    await expect(turns.run('a', async () => Promise.reject(new Error('broken')))).rejects.toThrow('broken')
    const { order, ask, endOne } = makeWork(turns)
    ask('a')
    const gone = new AbortController()
    const waiting = ask('b', gone.signal)
    await expect(ask('c')).rejects.toMatchObject({ refusal: { kind: 'busy' } })
    gone.abort()
    await expect(waiting).rejects.toThrow()
    await expect(ask('b', gone.signal)).rejects.toThrow()
    ask('c')
    await endOne()
    await endOne()
    expect(order).toEqual(['a', 'c'])
  })
})

describe('the turn of a page', () => {
  const hold = (ms: number) => {
    const until = performance.now() + ms
    while (performance.now() < until);
  }
  /** A page as it comes over the network: it finds out who asks, loads in a turn, and draws what it loaded. */
  const openPage = async (turns: FairTurns, who: string, { loadMs = 0, drawMs = 0 }, done: string[]) => {
    await new Promise((resolve) => setImmediate(resolve))
    const turn = new PageTurn(who, turns, 20)
    await turn.run(async () => hold(loadMs))
    await new Promise((resolve) => setImmediate(resolve))
    hold(drawMs)
    done.push(who)
    turn.leave()
  }

  it('lets a light page of one person through between the heavy ones of another', async () => {
    const turns = new FairTurns({ atOnce: 1, mostOfOne: 60, mostInAll: 400 })
    const done: string[] = []
    const heavy = Array.from({ length: 20 }, () => openPage(turns, 'ines', { loadMs: 10, drawMs: 10 }, done))
    await new Promise((resolve) => setTimeout(resolve, 5))
    const before = done.length
    await openPage(turns, 'tomas', {}, done)
    // The one that was under way, and at most one more that began while the request was read.
    expect(done.indexOf('tomas') - before).toBeLessThanOrEqual(2)
    await Promise.all(heavy)
    expect(done).toHaveLength(21)
  })

  it('is shared by the loads of one page, given back after them, and taken again for a later one', async () => {
    const turns = new FairTurns({ atOnce: 1, mostOfOne: 2, mostInAll: 3 })
    const page = new PageTurn('a', turns, 10)
    const order: string[] = []
    const both = Promise.all([
      page.run(async () => {
        await page.run(async () => order.push('inner'))
        order.push('outer')
      }),
      page.run(async () => order.push('beside')),
    ])
    const other = new PageTurn('b', turns, 10)
    const waiting = other.run(async () => order.push('other'))
    await both
    expect(order).not.toContain('other')
    await waiting
    await page.run(async () => order.push('later'))
    expect(order).toEqual(['beside', 'inner', 'outer', 'other', 'later'])
    page.leave()
  })

  it('is given back by a page that fails, and refused where too many wait', async () => {
    const turns = new FairTurns({ atOnce: 1, mostOfOne: 1, mostInAll: 2 })
    const page = new PageTurn('a', turns, 10_000)
    await expect(page.run(async () => Promise.reject(new Error('gone')))).rejects.toThrow('gone')
    await expect(new PageTurn('a', turns).run(async () => {})).rejects.toThrow(NoTurnError)
    page.leave()
    await settle()
    await expect(new PageTurn('a', turns, 0).run(async () => 'again')).resolves.toBe('again')
  })
})

describe('places', () => {
  it('are bounded for one and in all, and free once when they are left', () => {
    const places = new Places('streams', { mostOfOne: 2, mostInAll: 3 })
    const leave = places.take('a')
    places.take('a')
    expect(() => places.take('a')).toThrow(NoTurnError)
    places.take('b')
    expect(() => places.take('c')).toThrow(/limit of pages/)
    leave()
    leave()
    places.take('c')
    expect(() => places.take('a')).toThrow(/limit of pages/)
  })
})

it('a refusal of the queue is told in its words, whichever bundle’s copy of the class it is of', () => {
  // The queues are the whole process's: who asks may have another copy of the class than who made the queue.
  const refusal = { kind: 'too-many' as const, message: 'Many are on their way.' }
  const ofAnotherCopy = Object.assign(new Error(refusal.message), { name: 'NoTurnError', refusal })
  expect(ofAnotherCopy).toBeInstanceOf(NoTurnError)
  expect(explainError(ofAnotherCopy, 'asking')).toBe(refusal)
  expect(new Error('NoTurnError')).not.toBeInstanceOf(NoTurnError)
})
