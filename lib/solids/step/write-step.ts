import 'server-only'
import { fillOfShape, PRINT_PALETTE } from '@/lib/drawing'
import type { NamedSolid } from '@/lib/engine/folding'
import { StepFile, stepList, stepReal, stepText } from './part-21'
import { addPlace, addSolid } from './write-solid'

/** ISO 10303-242, edition 1: object identifier as its long form has it (from memory). */
const SCHEMA = 'AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }'
/** Points that are nearer to each other are one: borders are drawn in whole nanometres. */
const ACCURACY_MM = 1e-5

/** What the file says of itself. */
export interface StepIdentity {
  readonly partNumber: string
  readonly name: string
  readonly revisionLabel: string
  /** ISO 8601 */
  readonly at: string
}

/**
 * Bodies of the part as STEP (ISO 10303-21 in the schema of ISO 10303-242), in millimetres: one part of several named solids, with planes, cylinders
 * and the true radii of its bends. Equal bodies give equal bytes.
 */
export function writeStep(solids: readonly NamedSolid[], identity: StepIdentity): Uint8Array<ArrayBuffer> {
  const file = new StepFile()
  const shape = addProduct(file, identity)
  const context = addContext(file)
  const bodies = solids.map(({ solid, name, role }) => ({ item: addSolid(file, solid, name), role }))
  const frame = addPlace(file, [0, 0, 0], [0, 0, 1])
  const items = stepList([frame, ...bodies.map(({ item }) => item)])
  const form = file.add(`ADVANCED_BREP_SHAPE_REPRESENTATION(${stepText(identity.name)},${items},${context})`)
  file.add(`SHAPE_DEFINITION_REPRESENTATION(${shape},${form})`)
  const styled = bodies.map(({ item, role }) => {
    const style = addStyle(file, PRINT_PALETTE[fillOfShape(role)])
    return file.add(`STYLED_ITEM('',(${style}),${item})`)
  })
  file.add(`MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION('',${stepList(styled)},${context})`)
  const text = file.write({ name: identity.name, at: identity.at, schema: SCHEMA, system: 'Bendworthy' })
  return new Uint8Array(new TextEncoder().encode(text))
}

function addProduct(file: StepFile, { partNumber, name, revisionLabel }: StepIdentity): string {
  const application = file.add("APPLICATION_CONTEXT('managed model based 3d engineering')")
  file.add(
    `APPLICATION_PROTOCOL_DEFINITION('international standard','ap242_managed_model_based_3d_engineering',2014,${application})`,
  )
  const context = file.add(`PRODUCT_CONTEXT('',${application},'mechanical')`)
  const product = file.add(`PRODUCT(${stepText(partNumber)},${stepText(name)},'',(${context}))`)
  file.add(`PRODUCT_RELATED_PRODUCT_CATEGORY('part','',(${product}))`)
  const formation = file.add(`PRODUCT_DEFINITION_FORMATION(${stepText(revisionLabel)},'',${product})`)
  const view = file.add(`PRODUCT_DEFINITION_CONTEXT('part definition',${application},'design')`)
  const definition = file.add(`PRODUCT_DEFINITION('design','',${formation},${view})`)
  return file.add(`PRODUCT_DEFINITION_SHAPE('','',${definition})`)
}

function addContext(file: StepFile): string {
  const length = file.add('(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))')
  const angle = file.add('(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))')
  const solidAngle = file.add('(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())')
  const accuracy = file.add(
    `UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(${stepReal(ACCURACY_MM)}),${length},'distance_accuracy_value','')`,
  )
  return file.add(
    `(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((${accuracy}))GLOBAL_UNIT_ASSIGNED_CONTEXT((${length},${angle},${solidAngle}))REPRESENTATION_CONTEXT('','3D'))`,
  )
}

function addStyle(file: StepFile, colour: string): string {
  const parts = [1, 3, 5].map((at) => stepReal(Number.parseInt(colour.slice(at, at + 2), 16) / 255))
  const rgb = file.once(`COLOUR_RGB('',${parts.join(',')})`)
  const fill = file.once(`FILL_AREA_STYLE_COLOUR('',${rgb})`)
  const area = file.once(`SURFACE_STYLE_FILL_AREA(${file.once(`FILL_AREA_STYLE('',(${fill}))`)})`)
  const usage = file.once(`SURFACE_STYLE_USAGE(.BOTH.,${file.once(`SURFACE_SIDE_STYLE('',(${area}))`)})`)
  return file.once(`PRESENTATION_STYLE_ASSIGNMENT((${usage}))`)
}
