import { describe, expect, it } from 'vitest'
import { FairTurns, NoTurnError } from '@/lib/server/fair-turns'
import { Places } from '@/lib/server/places'

const LIMITS = { atOnce: 1, mostOfOne: 24, mostInAll: 60 }
const settle = () => new Promise((resolve) => setTimeout(resolve, 0))

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

describe('places', () => {
  it('are bounded for one and in all, and free once when they are left', () => {
    const places = new Places('streams', { mostOfOne: 2, mostInAll: 3 })
    const leave = places.take('a')
    places.take('a')
    expect(() => places.take('a')).toThrow(NoTurnError)
    places.take('b')
    expect(() => places.take('c')).toThrow(/As many pages/)
    leave()
    leave()
    places.take('c')
    expect(() => places.take('a')).toThrow(/As many pages/)
  })
})
