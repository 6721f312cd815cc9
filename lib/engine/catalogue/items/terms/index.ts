import type { ItemDefinition } from '../../define-item'
import { bowAndTwist } from './bow-and-twist'
import { changeControl } from './change-control'
import { finishTerms } from './finish-terms'
import { firstArticle } from './first-article'
import { flameClass } from './flame-class'
import { lessons } from './lessons'
import { marking } from './marking'
import { precedence } from './precedence'
import { reworkGrade } from './rework-grade'
import { substances } from './substances'
import { substitutes } from './substitutes'
import { testAccess } from './test-access'
import { testTerms } from './test-terms'
import { toolingChange } from './tooling-change'
import { viaStructure } from './via-structure'

/** What order and drawing state beside the geometry, by section. */
export const MATERIALS_TERMS: readonly ItemDefinition[] = [flameClass]
export const FABRICATION_TERMS: readonly ItemDefinition[] = [
  testTerms,
  testAccess,
  marking,
  finishTerms,
  bowAndTwist,
  viaStructure,
  reworkGrade,
  firstArticle,
  changeControl,
  substitutes,
  substances,
  precedence,
  toolingChange,
  lessons,
]
