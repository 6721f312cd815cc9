import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import initKernel from 'replicad-opencascadejs'

/** A body as a solid-modelling kernel that shares nothing with this project reads it from a STEP file. */
export interface ReadSolid {
  readonly isValid: boolean
  readonly volumeMm3: number
  readonly low: readonly number[]
  readonly high: readonly number[]
}

const kernel = (async () => {
  const wasm = createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm')
  const silent = () => undefined
  return await initKernel({ wasmBinary: readFileSync(wasm), print: silent, printErr: silent })
})()

/** Reads a STEP file whole; its solids in the order of the file. */
export async function readStep(bytes: Uint8Array): Promise<readonly ReadSolid[]> {
  const oc = await kernel
  oc.FS.writeFile('/read.step', bytes)
  const reader = new oc.STEPControl_Reader()
  const status = reader.ReadFile('/read.step')
  oc.FS.unlink('/read.step')
  if (status !== oc.IFSelect_ReturnStatus.IFSelect_RetDone) throw new Error(`the file was not read: ${String(status)}`)
  reader.TransferRoots()
  const found: ReadSolid[] = []
  const explorer = new oc.TopExp_Explorer(
    reader.OneShape(),
    oc.TopAbs_ShapeEnum.TopAbs_SOLID,
    oc.TopAbs_ShapeEnum.TopAbs_SHAPE,
  )
  for (; explorer.More(); explorer.Next()) {
    const solid = explorer.Current()
    const properties = new oc.GProp_GProps()
    oc.BRepGProp.VolumeProperties(solid, properties, 1e-12, true, false)
    const box = new oc.Bnd_Box()
    oc.BRepBndLib.AddOptimal(solid, box, false, false)
    const [low, high] = [box.CornerMin(), box.CornerMax()]
    found.push({
      isValid: new oc.BRepCheck_Analyzer(solid, true, false, false).IsValid(),
      volumeMm3: properties.Mass(),
      low: [low.X(), low.Y(), low.Z()],
      high: [high.X(), high.Y(), high.Z()],
    })
  }
  reader.delete()
  return found
}
