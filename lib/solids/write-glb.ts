import 'server-only'
import { type Buffer, ColorUtils, Document, type Material, type Node, NodeIO } from '@gltf-transform/core'
import { fillOfShape, PRINT_PALETTE } from '@/lib/drawing'
import { normalOf, type ShapeBody, type Vector } from '@/lib/engine/folding'

const M_PER_MM = 0.001

/**
 * Folded bodies as binary glTF 2.0 (ISO/IEC 12113:2022): one named mesh for each body, metres, y up as the standard asks;
 * the plate that stays lies in the plane of x and z. Equal bodies give equal bytes.
 */
export async function writeGlb(bodies: readonly ShapeBody[], name: string): Promise<Uint8Array<ArrayBuffer>> {
  const document = new Document()
  document.getRoot().getAsset().generator = 'Bendworthy'
  const buffer = document.createBuffer()
  const scene = document.createScene(name)
  document.getRoot().setDefaultScene(scene)
  const part = document.createNode(name)
  scene.addChild(part)
  const materials = new Map<string, Material>()
  for (const body of bodies) {
    const colour = PRINT_PALETTE[fillOfShape(body.role)]
    const material = materials.get(colour) ?? makeMaterial(document, colour, fillOfShape(body.role))
    materials.set(colour, material)
    part.addChild(makeNode(document, body, material, buffer))
  }
  return new Uint8Array(await new NodeIO().writeBinary(document))
}

function makeMaterial(document: Document, colour: string, name: string): Material {
  const [red = 0, green = 0, blue = 0] = ColorUtils.hexToFactor(Number.parseInt(colour.slice(1), 16), [0, 0, 0])
  return document
    .createMaterial(name)
    .setBaseColorFactor([red, green, blue, 1])
    .setMetallicFactor(0)
    .setRoughnessFactor(0.8)
}

/** Each face keeps its own normal, so that edges stay sharp. */
function makeNode(document: Document, { id, name, faces }: ShapeBody, material: Material, buffer: Buffer): Node {
  const positions: number[] = []
  const normals: number[] = []
  for (const { corners } of faces) {
    const [start, ...rest] = corners.map(placeYUp)
    const normal = placeYUp(normalOf(corners))
    rest.slice(1).forEach((corner, at) => {
      for (const point of [start, rest[at], corner]) {
        positions.push(...(point ?? corner).map((mm) => mm * M_PER_MM))
        normals.push(...normal)
      }
    })
  }
  const accessor = (values: number[]) =>
    document.createAccessor().setType('VEC3').setArray(new Float32Array(values)).setBuffer(buffer)
  const primitive = document
    .createPrimitive()
    .setMaterial(material)
    .setAttribute('POSITION', accessor(positions))
    .setAttribute('NORMAL', accessor(normals))
  const mesh = document.createMesh(name).addPrimitive(primitive)
  return document.createNode(name).setMesh(mesh).setExtras({ bodyId: id })
}

/** Ours counts z up from the part; glTF has y up, and both are right-handed. */
const placeYUp = ([x, y, z]: Vector): Vector => [x, z, -y]
