/** A workspace's own edition of the catalogue: what it adds, rewords, switches off and limits. */
export { makeCatalogue, type SwitchedOffItem, type WorkspaceCatalogue } from './make-catalogue'
export {
  type CatalogueTemplate,
  catalogueTemplateSchema,
  DELIVERED_TEMPLATE,
  findTemplateProblems,
  type ItemChange,
  itemChangeSchema,
  type OwnItem,
  ownItemSchema,
} from './schema'
