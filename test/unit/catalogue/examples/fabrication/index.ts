import type { ItemExample } from '../item-example'
import { arrayDrawingExamples } from './array-drawing'
import { artworkAgreementExamples } from './artwork-agreement'
import { bendCallOutExamples } from './bend-call-out'
import { bendOnPlanExamples } from './bend-on-plan'
import { buildableConstructionExamples } from './buildable-construction'
import { capabilityMatchExamples } from './capability-match'
import { carrierExamples } from './carrier'
import { circuitTypeExamples } from './circuit-type'
import { constructionCostExamples } from './construction-cost'
import { contactPersonExamples } from './contact-person'
import { couponTestExamples } from './coupon-test'
import { coverlayDetailExamples } from './coverlay-detail'
import { electricalTestExamples } from './electrical-test'
import { engineeringQueriesExamples } from './engineering-queries'
import { fabricatorCurrencyExamples } from './fabricator-currency'
import { featureListsExamples } from './feature-lists'
import { flexTestTermsExamples } from './flex-test-terms'
import { foldTestExamples } from './fold-test'
import { layerNamesExamples } from './layer-names'
import { layerTableExamples } from './layer-table'
import { manufacturingReviewExamples } from './manufacturing-review'
import { materialCallOutsExamples } from './material-call-outs'
import { netlistExamples } from './netlist'
import { packageContentsExamples } from './package-contents'
import { packingExamples } from './packing'
import { panelFormExamples } from './panel-form'
import { partsPerPanelExamples } from './parts-per-panel'
import { performanceClassExamples } from './performance-class'
import { prepregSetBackExamples } from './prepreg-set-back'
import { registrationFeaturesExamples } from './registration-features'
import { requirementRangeExamples } from './requirement-range'
import { statementsAgreeExamples } from './statements-agree'
import { stiffenerDetailExamples } from './stiffener-detail'
import { stockMaterialsExamples } from './stock-materials'
import { tolerancesGivenExamples } from './tolerances-given'

/** By the item's id. */
export const FABRICATION_EXAMPLES: Readonly<Record<string, readonly ItemExample[]>> = {
  'statements-agree': statementsAgreeExamples,
  'artwork-agreement': artworkAgreementExamples,
  netlist: netlistExamples,
  'bend-call-out': bendCallOutExamples,
  'bend-on-plan': bendOnPlanExamples,
  'buildable-construction': buildableConstructionExamples,
  'capability-match': capabilityMatchExamples,
  'circuit-type': circuitTypeExamples,
  'construction-cost': constructionCostExamples,
  'contact-person': contactPersonExamples,
  'coupon-test': couponTestExamples,
  'coverlay-detail': coverlayDetailExamples,
  'electrical-test': electricalTestExamples,
  'engineering-queries': engineeringQueriesExamples,
  'fabricator-currency': fabricatorCurrencyExamples,
  'feature-lists': featureListsExamples,
  'flex-test-terms': flexTestTermsExamples,
  'fold-test': foldTestExamples,
  'layer-names': layerNamesExamples,
  'layer-table': layerTableExamples,
  'manufacturing-review': manufacturingReviewExamples,
  'material-call-outs': materialCallOutsExamples,
  'package-contents': packageContentsExamples,
  packing: packingExamples,
  'panel-form': panelFormExamples,
  'parts-per-panel': partsPerPanelExamples,
  'performance-class': performanceClassExamples,
  'registration-features': registrationFeaturesExamples,
  'requirement-range': requirementRangeExamples,
  'stiffener-detail': stiffenerDetailExamples,
  'stock-materials': stockMaterialsExamples,
  'tolerances-given': tolerancesGivenExamples,
  carrier: carrierExamples,
  'array-drawing': arrayDrawingExamples,
  'prepreg-set-back': prepregSetBackExamples,
}
