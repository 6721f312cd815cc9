import { describe, expect, test } from 'vitest'
import type { ZoneResult } from '@/lib/engine'
import { listBareFaces } from '@/lib/engine/catalogue/bare-faces'

/** What covers copper, from its own layer outwards. Common practice, no published source. */

type Kind = ZoneResult['layers'][number]['kind']

/** Layers from top to bottom; a conductor with a coverage of 0 is written `absent`. */
function listBare(kinds: readonly (Kind | 'absent')[]): string[] {
  const layers = kinds.map((kind, at) => ({
    layerId: String(at),
    name: `${kind} ${at}`,
    kind: kind === 'absent' ? 'conductor' : kind,
    coverageFraction: kind === 'absent' ? 0 : kind === 'conductor' ? 0.5 : null,
  }))
  return listBareFaces({ layers } as unknown as ZoneResult).map(({ layer, face }) => `${layer.name}, ${face}`)
}

describe('a face of copper', () => {
  test.each<readonly [name: string, kinds: readonly (Kind | 'absent')[], bare: readonly string[]]>([
    ['film on both', ['coverlay-film', 'adhesive', 'conductor', 'base-film'], []],
    ['nothing above', ['conductor', 'base-film'], ['conductor 0, upper']],
    ['adhesive alone', ['adhesive', 'conductor', 'base-film'], ['conductor 1, upper']],
    ['solder mask, where nobody counts it', ['solder-mask', 'conductor', 'base-film'], ['conductor 1, upper']],
    [
      'a shield film, which is copper or foil itself',
      ['shield-film', 'conductor', 'base-film'],
      ['conductor 1, upper'],
    ],
    [
      'toward the air between leaves, whatever the other leaf has',
      ['coverlay-film', 'adhesive', 'conductor', 'unbonded-gap', 'base-film', 'conductor', 'coverlay-film'],
      ['conductor 2, lower'],
    ],
    [
      'toward the air on both sides of the gap',
      ['coverlay-film', 'conductor', 'adhesive', 'unbonded-gap', 'conductor', 'base-film'],
      ['conductor 1, lower', 'conductor 4, upper'],
    ],
    ['film before the gap', ['base-film', 'conductor', 'adhesive', 'coverlay-film', 'unbonded-gap', 'base-film'], []],
    ['copper that is not there', ['absent', 'base-film'], []],
    ['a stiffener with its adhesive', ['stiffener', 'adhesive', 'conductor', 'base-film'], []],
  ])('%s', (_, kinds, bare) => {
    expect(listBare(kinds)).toEqual(bare)
  })
})
