/** Parts of a revision's page to which a blocker can link. */
export type RevisionTab =
  | 'brief'
  | 'construction'
  | 'bends'
  | 'features'
  | 'results'
  | 'artwork'
  | 'checklist'
  | 'threads'
  | 'sign-off'
