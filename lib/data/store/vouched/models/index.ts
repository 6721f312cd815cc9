import 'server-only'
import { DESIGN_MODELS } from './design'
import { MEETING_MODELS } from './meetings'
import { PEOPLE_MODELS } from './people'
import { REFERENCE_MODELS } from './reference'
import { RELEASE_MODELS } from './release'
import { REVIEW_MODELS } from './review'
import type { VouchedModel } from './vouched-model'

export { UNVOUCHED_MODELS } from './unvouched'
export type { VouchedModel, VouchedRow } from './vouched-model'

/** Every table is here or in UNVOUCHED_MODELS: a test compares both with the models. */
export const VOUCHED_MODELS: readonly VouchedModel[] = [
  ...PEOPLE_MODELS,
  ...DESIGN_MODELS,
  ...REVIEW_MODELS,
  ...MEETING_MODELS,
  ...RELEASE_MODELS,
  ...REFERENCE_MODELS,
]

const BY_MODEL = new Map(VOUCHED_MODELS.map((vouched) => [vouched.model, vouched]))

export function findVouchedModel(model: string | undefined): VouchedModel | null {
  return BY_MODEL.get(model ?? '') ?? null
}
