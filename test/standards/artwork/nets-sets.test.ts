import { describe, expect, test } from 'vitest'
import { type ArtworkFacts, gatherFacts, readSet } from '@/lib/artwork'
import { listRealFiles, readWholeSet } from './real-sets'

const files = listRealFiles()

/** Both sets name the net of each pad and track (Gerber X2, `.N`): their own programs worked the nets out, and these boards were made. */
const NAMED = [
  ['flex-n64-full', 34, 770],
  ['flex-flexgrid-v4', 20, 613],
] as const

const netsOf = (set: string, isKept: (name: string) => boolean = () => true): ArtworkFacts['nets'] =>
  gatherFacts(readSet(readWholeSet(set).filter(({ name }) => isKept(name))), () => '').nets

describe.skipIf(files.length === 0)('nets of real sets against their copper', () => {
  test.each(NAMED)(
    '%s: %d nets at %d places hang together each by itself',
    (set, netCount, placeCount) => {
      const nets = netsOf(set)
      expect(nets?.unknownHoleCount).toBe(0)
      expect(nets?.sources).toHaveLength(1)
      expect(nets?.sources[0]).toMatchObject({
        netCount,
        placeCount,
        onCopperCount: placeCount,
        openCount: 0,
        shortCount: 0,
      })
    },
    120_000,
  )

  test('without its drill file nets of two layers fall apart, and none is short', () => {
    const [source] = netsOf('flex-n64-full', (name) => !name.endsWith('.drl'))?.sources ?? []
    expect(source?.openCount).toBeGreaterThan(5)
    expect(source?.shortCount).toBe(0)
  }, 120_000)

  test('with its bottom copper on top of its top copper nets are short', () => {
    const given = readWholeSet('flex-n64-full').filter(({ name }) => /F_Cu|B_Cu|\.drl$/.test(name))
    const text = (name: RegExp) => new TextDecoder().decode(given.find((file) => name.test(file.name))?.bytes)
    // Aperture numbers of the second file are moved out of the first one's way.
    const below = text(/B_Cu/).replace(/D(\d{2,})(?=[*C,RO])/g, (_, code: string) => `D${Number(code) + 500}`)
    const both = text(/F_Cu/).replace('M02*', `${below.slice(below.indexOf('%ADD'))}`)
    const set = readSet([
      { name: 'both-F_Cu.gbr', bytes: new TextEncoder().encode(both) },
      ...given.filter(({ name }) => name.endsWith('.drl')),
    ])
    expect(gatherFacts(set, () => '').nets?.sources[0]?.shortCount).toBeGreaterThan(0)
  }, 120_000)
})
