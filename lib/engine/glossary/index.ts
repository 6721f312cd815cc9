export { markTerms, type TextPiece } from './mark-terms'
export { GLOSSARY, type Term } from './terms'
