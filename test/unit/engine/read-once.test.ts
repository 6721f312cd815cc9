import { describe, expect, it, vi } from 'vitest'
import { freezeDeep, readOnce } from '@/lib/engine'

describe('a reader that remembers', () => {
  it('reads the same text once, and gives the same document', () => {
    const read = vi.fn((text: string) => ({ text }))
    const reader = readOnce(read)
    expect(reader('a')).toBe(reader('a'))
    expect(reader('b')).toEqual({ text: 'b' })
    expect(read).toHaveBeenCalledTimes(2)
  })

  it('gives what nobody can change', () => {
    const document = readOnce((text) => JSON.parse(text) as { list: { value: number }[] })('{"list":[{"value":1}]}')
    expect(() => document.list.push({ value: 2 })).toThrow(TypeError)
    expect(() => Object.assign(document.list[0] ?? {}, { value: 2 })).toThrow(TypeError)
    expect(freezeDeep(null)).toBe(null)
  })

  it('keeps nothing of a text that cannot be read', () => {
    const read = vi.fn(() => {
      throw new Error('damaged')
    })
    const reader = readOnce(read)
    expect(() => reader('x')).toThrow('damaged')
    expect(() => reader('x')).toThrow('damaged')
    expect(read).toHaveBeenCalledTimes(2)
  })

  it('forgets first what nobody asked for longest, and never keeps one that would push out all others', () => {
    const read = vi.fn((text: string) => ({ length: text.length }))
    const reader = readOnce(read)
    const texts = ['a', 'b', 'c', 'd', 'e'].map((letter) => letter.repeat(900_000))
    const [a = '', b = '', c = '', d = '', e = ''] = texts
    for (const text of [a, b, c, d, a, e]) reader(text)
    expect(read).toHaveBeenCalledTimes(5)
    reader(a)
    expect(read, 'it was asked for since').toHaveBeenCalledTimes(5)
    reader(b)
    expect(read, 'the first that nobody asked for').toHaveBeenCalledTimes(6)
    const huge = 'h'.repeat(1_000_001)
    reader(huge)
    reader(huge)
    expect(read).toHaveBeenCalledTimes(8)
    reader(a)
    expect(read).toHaveBeenCalledTimes(8)
  })
})
