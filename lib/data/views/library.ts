/** Materials and starting constructions that the workspace keeps for its designs. */

import type { Material } from '@/lib/engine/design'
import type { PersonView } from './people'

interface LibraryEntryView {
  readonly entryId: string
  readonly version: number
  readonly name: string
  /** Of this version, in words. */
  readonly reason: string
  readonly changedBy: PersonView
  readonly changedAt: string
}

export interface OwnMaterialView extends LibraryEntryView {
  /** As a design takes it along: its id names entry and version. */
  readonly material: Material
}

export interface KeptConstructionView extends LibraryEntryView {
  readonly purpose: string
  readonly conductorLayerCount: number
  readonly layerCount: number
  readonly zoneCount: number
  readonly bendCount: number
}

export interface LibraryView {
  readonly materials: readonly OwnMaterialView[]
  readonly constructions: readonly KeptConstructionView[]
  readonly mayEdit: boolean
}

/** A revision of another project whose design the person may begin with. */
export interface CopyableRevisionView {
  readonly revisionId: string
  readonly label: string
  readonly designName: string
  readonly projectId: string
  readonly projectName: string
}

/** What a new revision of a project may begin with, beside the delivered constructions and the project's own revisions. */
export interface RevisionStartsView {
  readonly constructions: readonly KeptConstructionView[]
  /** Newest first. */
  readonly elsewhere: readonly CopyableRevisionView[]
  /** Older ones are left out. */
  readonly isElsewhereCut: boolean
}
