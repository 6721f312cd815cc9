export {
  findStartingConstruction,
  listStartingConstructions,
  type StartingConstruction,
} from './starting-constructions'
