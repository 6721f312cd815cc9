export { RemedyPanel } from './remedy-panel'
export { searchWayOut } from './search-remedies'
