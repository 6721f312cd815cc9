import type { ItemDefinition } from '../../define-item'
import { arrayDrawing } from './array-drawing'
import { artworkAgreement } from './artwork-agreement'
import { bendCallOut } from './bend-call-out'
import { bendOnPlan } from './bend-on-plan'
import { buildableConstruction } from './buildable-construction'
import { capabilityMatch } from './capability-match'
import { carrier } from './carrier'
import { circuitType } from './circuit-type'
import { constructionCost } from './construction-cost'
import { contactPerson } from './contact-person'
import { couponTest } from './coupon-test'
import { coverlayDetail } from './coverlay-detail'
import { electricalTest } from './electrical-test'
import { engineeringQueries } from './engineering-queries'
import { fabricatorCurrency } from './fabricator-currency'
import { featureLists } from './feature-lists'
import { flexTestTerms } from './flex-test-terms'
import { foldTest } from './fold-test'
import { layerNames } from './layer-names'
import { layerTable } from './layer-table'
import { manufacturingReview } from './manufacturing-review'
import { materialCallOuts } from './material-call-outs'
import { netlist } from './netlist'
import { packageContents } from './package-contents'
import { packing } from './packing'
import { panelForm } from './panel-form'
import { partsPerPanel } from './parts-per-panel'
import { performanceClass } from './performance-class'
import { prepregSetBack } from './prepreg-set-back'
import { registrationFeatures } from './registration-features'
import { requirementRange } from './requirement-range'
import { statementsAgree } from './statements-agree'
import { stiffenerDetail } from './stiffener-detail'
import { stockMaterials } from './stock-materials'
import { tolerancesGiven } from './tolerances-given'

/** Fabrication communication: what the fabricator must know, hold and have agreed to. */
export const FABRICATION_ITEMS: readonly ItemDefinition[] = [
  capabilityMatch,
  buildableConstruction,
  manufacturingReview,
  stockMaterials,
  materialCallOuts,
  layerNames,
  layerTable,
  featureLists,
  statementsAgree,
  requirementRange,
  packageContents,
  artworkAgreement,
  netlist,
  bendCallOut,
  bendOnPlan,
  performanceClass,
  circuitType,
  coverlayDetail,
  stiffenerDetail,
  electricalTest,
  couponTest,
  foldTest,
  flexTestTerms,
  panelForm,
  partsPerPanel,
  constructionCost,
  registrationFeatures,
  fabricatorCurrency,
  engineeringQueries,
  packing,
  contactPerson,
  tolerancesGiven,
  carrier,
  arrayDrawing,
  prepregSetBack,
]
