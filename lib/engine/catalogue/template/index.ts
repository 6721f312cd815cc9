/** A workspace's own edition of the catalogue: what it adds, rewords, switches off and limits, and its profiles. */
export {
  type CatalogueEdition,
  listProfiles,
  makeCatalogue,
  type SwitchedOffItem,
  type WorkspaceCatalogue,
} from './make-catalogue'
export type { OwnCheck } from './own-check'
export {
  type CatalogueTemplate,
  catalogueTemplateSchema,
  DELIVERED_TEMPLATE,
  enteredTemplateSchema,
  findTemplateProblems,
  type ItemChange,
  itemChangeSchema,
  MAX_CATALOGUE_CHARACTERS,
  newOwnItemSchema,
  newProfileSchema,
  type OwnItem,
  ownItemSchema,
  profileSchema,
} from './schema'
