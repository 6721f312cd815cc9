import { validateBytes } from 'gltf-validator'
import { describe, expect, it } from 'vitest'
import { evaluate } from '@/lib/engine'
import { checkFold, prepareFolding, shapeFold } from '@/lib/engine/folding'
import { writeGlb } from '@/lib/solids'
import { DEMO_DESIGNS, readDrawnDesign } from '../engine-assembly/demo-design-files'

interface Gltf {
  readonly meshes: readonly {
    readonly name: string
    readonly primitives: readonly { readonly attributes: { readonly POSITION: number } }[]
  }[]
  readonly accessors: readonly {
    readonly min?: readonly number[]
    readonly max?: readonly number[]
    readonly count: number
  }[]
}

/** The JSON chunk of a binary glTF (glTF 2.0, 4.4: a header of 12 bytes, then chunks of length, kind and content). */
function readJson(bytes: Uint8Array): Gltf {
  const view = new DataView(bytes.buffer, bytes.byteOffset)
  return JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + view.getUint32(12, true))))
}

describe.each(DEMO_DESIGNS)('%s as binary glTF', (name) => {
  const design = readDrawnDesign(name)
  const { zones, bends } = evaluate(design)
  const folding = prepareFolding(design, zones, bends)
  if (folding.kind !== 'foldable') throw new Error(`${name} cannot be folded`)
  const bodies = shapeFold(design, folding.value, folding.value.order.length)

  it('the validator of the format’s own keepers finds nothing', async () => {
    const { issues, info } = await validateBytes(await writeGlb(bodies, name))
    expect(issues.messages).toEqual([])
    expect(info.totalTriangleCount).toBeGreaterThan(100)
  })

  it('is in metres, y up, and fills the box that the clash check computes on its own', async () => {
    const { accessors, meshes } = readJson(await writeGlb(bodies, name))
    const places = meshes.map(({ primitives }) => accessors[primitives[0]?.attributes.POSITION ?? 0])
    const low = [0, 1, 2].map((axis) => Math.min(...places.map((place) => place?.min?.[axis] ?? 0)) * 1000)
    const high = [0, 1, 2].map((axis) => Math.max(...places.map((place) => place?.max?.[axis] ?? 0)) * 1000)
    const { envelope } = checkFold(folding.value, 0.1)
    const [lx, ly, lz] = envelope.low
    const [hx, hy, hz] = envelope.high
    // The check adds the sag of its strips of 15 degrees to the box.
    const sagMm = 0.2
    const near = (found: readonly number[], wanted: readonly number[]) =>
      expect(found.filter((mm, axis) => Math.abs(mm - (wanted[axis] ?? 0)) >= sagMm)).toEqual([])
    near(low, [lx, lz, -hy])
    near(high, [hx, hz, -ly])
  })

  it('has a mesh for each body, with its name, and the same bytes each time', async () => {
    const bytes = await writeGlb(bodies, name)
    expect(readJson(bytes).meshes.map((mesh) => mesh.name)).toEqual(bodies.map((body) => body.name))
    expect(Buffer.from(bytes).equals(Buffer.from(await writeGlb(bodies, name)))).toBe(true)
  })
})
