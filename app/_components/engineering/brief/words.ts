import { BRIEF_FIELDS, listChoices } from '@/lib/engine'

export const CLASS_CHOICES = listChoices(BRIEF_FIELDS.performanceClass)
export const TYPE_CHOICES = listChoices(BRIEF_FIELDS.circuitType)
export const USE_CHOICES = listChoices(BRIEF_FIELDS.installationUses)
export const PLATING_QUALITY_CHOICES = listChoices(BRIEF_FIELDS.holePlatingQuality)
export const FINISH_CHOICES = listChoices(BRIEF_FIELDS.surfaceFinish)
export const PANEL_CHOICES = listChoices(BRIEF_FIELDS.panelForm)
