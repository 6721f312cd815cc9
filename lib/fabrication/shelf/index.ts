export * from './content'
export { findShelfIssues, findShelfRowIssues, type ShelfIssue } from './problems'
