import type { ItemExample } from '../item-example'
import { antennaExamples } from './antenna'
import { bowAndTwistExamples } from './bow-and-twist'
import { changeControlExamples } from './change-control'
import { cleanlinessExamples } from './cleanliness'
import { coldMotionExamples } from './cold-motion'
import { esdEntryExamples } from './esd-entry'
import { finishTermsExamples } from './finish-terms'
import { firstArticleExamples } from './first-article'
import { flameClassExamples } from './flame-class'
import { fluidsExamples } from './fluids'
import { lessonsExamples } from './lessons'
import { markingExamples } from './marking'
import { moistureSweatExamples } from './moisture-sweat'
import { outgassingExamples } from './outgassing'
import { precedenceExamples } from './precedence'
import { pullLoadExamples } from './pull-load'
import { reworkGradeExamples } from './rework-grade'
import { skinContactExamples } from './skin-contact'
import { substancesExamples } from './substances'
import { substitutesExamples } from './substitutes'
import { testAccessExamples } from './test-access'
import { testTermsExamples } from './test-terms'
import { toolingChangeExamples } from './tooling-change'
import { viaStructureExamples } from './via-structure'

/** Of what order and drawing state, and of what a part meets in service; by the item's id. */
export const TERMS_EXAMPLES: Readonly<Record<string, readonly ItemExample[]>> = {
  antenna: antennaExamples,
  'bow-and-twist': bowAndTwistExamples,
  'change-control': changeControlExamples,
  cleanliness: cleanlinessExamples,
  'cold-motion': coldMotionExamples,
  'esd-entry': esdEntryExamples,
  'finish-terms': finishTermsExamples,
  'first-article': firstArticleExamples,
  'flame-class': flameClassExamples,
  fluids: fluidsExamples,
  lessons: lessonsExamples,
  marking: markingExamples,
  'moisture-sweat': moistureSweatExamples,
  outgassing: outgassingExamples,
  precedence: precedenceExamples,
  'pull-load': pullLoadExamples,
  'rework-grade': reworkGradeExamples,
  'skin-contact': skinContactExamples,
  substances: substancesExamples,
  substitutes: substitutesExamples,
  'test-access': testAccessExamples,
  'test-terms': testTermsExamples,
  'tooling-change': toolingChangeExamples,
  'via-structure': viaStructureExamples,
}
