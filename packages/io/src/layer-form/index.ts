export {
  LAYER_LIMITS,
  layerBudget,
  layerName,
  type LayerBudget,
  type LayerCrs,
  type Position,
  type Positions,
  type VectorFeature,
  type VectorGeometry,
  type VectorLayer,
} from "./layer.ts";
export { ShapeFault, allPositions, mapPositions, simplest } from "./geometry.ts";
export { LayerBuilder, idOf, jsonOf } from "./builder.ts";
