export { markTerms } from './mark-terms'
export { GLOSSARY, type Term } from './terms'
