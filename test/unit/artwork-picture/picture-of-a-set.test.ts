import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { buildCopperStack, drawLayers, gatherFacts, type NamedFile, readSet } from '@/lib/artwork'
import { type DrawnLayer, readPicture, UNIT_NM, writePicture } from '@/lib/artwork-picture'
import { drawDrill, drawGerber } from '../artwork/draw-set'

function drawSet(files: readonly NamedFile[]) {
  const set = readSet(files)
  const stack = buildCopperStack(set)
  const bytes = writePicture(drawLayers(set, stack))
  return { bytes, layers: readPicture(bytes), facts: gatherFacts(set, () => '', stack) }
}

/** By the fans of triangles that are painted: what lies under an odd number of them is covered, so that signed areas of outer borders and holes add up. */
function areaMm2({ corners, pathStarts }: DrawnLayer): number {
  let double = 0
  for (let path = 0; path + 1 < pathStarts.length; path += 1) {
    const start = pathStarts[path] ?? 0
    const at = (corner: number, axis: number) => (corners[2 * corner + axis] ?? 0) - (corners[2 * start + axis] ?? 0)
    for (let corner = start + 1; corner + 1 < (pathStarts[path + 1] ?? 0); corner += 1)
      double += at(corner, 0) * at(corner + 1, 1) - at(corner + 1, 0) * at(corner, 1)
  }
  return (double / 2) * (UNIT_NM / 1e6) ** 2
}

describe('the picture of a set', () => {
  it('covers what the shapes cover: areas in closed form, clear areas taken away', () => {
    const { layers } = drawSet([
      drawGerber('top.gbr', 'Copper,L1,Top', [
        {
          area: [
            [0, 0],
            [10, 0],
            [10, 5],
            [0, 5],
          ],
        },
        {
          area: [
            [2, 1],
            [4, 1],
            [4, 3],
            [2, 3],
          ],
          isClear: true,
        },
        { pad: [20, 2], sizeMm: 2 },
      ]),
      drawDrill(
        'plated.drl',
        [
          [1, 1],
          [3, 4],
        ],
        0.5,
      ),
    ])
    const [top, holes] = layers as [DrawnLayer, DrawnLayer]
    expect(top.head).toMatchObject({ fileName: 'top.gbr', role: 'copper', side: 'top', copperPlace: 0 })
    expect(areaMm2(top)).toBeCloseTo(50 - 4 + Math.PI, 3)
    expect(holes.head).toMatchObject({ fileName: 'plated.drl', role: 'holes', copperPlace: null })
    expect(areaMm2(holes)).toBeCloseTo((2 * Math.PI) / 16, 2)
  })

  it('of the demonstration agrees with its measured areas to 0.01 %, and takes less room than the files', () => {
    const names = readdirSync('seed/artwork').filter((name) => name.startsWith('pipit'))
    const files = names.map((name) => ({ name, bytes: new Uint8Array(readFileSync(`seed/artwork/${name}`)) }))
    const { layers, facts, bytes } = drawSet(files)
    expect(layers.map(({ head }) => head.fileName).slice(0, 2)).toEqual(['pipit-l1.gbr', 'pipit-l2.gbr'])
    expect(layers).toHaveLength(names.length)
    for (const layer of layers) {
      const measured = facts.files.find(({ name }) => name === layer.head.fileName)?.copper?.areaMm2
      if (measured !== undefined) expect(areaMm2(layer) / measured).toBeCloseTo(1, 4)
    }
    expect(bytes.length).toBeLessThan(3 * files.reduce((sum, file) => sum + file.bytes.length, 0))
  })

  it('that ends early, or is something else, is refused with a reason', () => {
    const { bytes } = drawSet([drawGerber('top.gbr', 'Copper,L1,Top', [{ pad: [1, 1], sizeMm: 1 }])])
    expect(() => readPicture(bytes.subarray(0, bytes.length - 3))).toThrow('ends too early')
    expect(() => readPicture(new TextEncoder().encode('%FSLAX46Y46*%\n%MOMM*%'))).toThrow('no picture')
    const longer = bytes.slice()
    // The number of paths of the only piece, one more than there is.
    longer[longer.length - 1] = 0x80
    expect(() => readPicture(longer)).toThrow(RangeError)
  })
})
