/** What a fabricator's panels, rates and shelf add to the search for remedies. */
export { explainUnpriced, type RemedyBasis, toRemedyOptions } from './basis'
