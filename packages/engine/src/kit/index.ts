export type * from "./types.ts";
export { overlaps, pieceVolume, type PlacedPiece } from "./piece.ts";
export { sectionOf, type Section } from "./section.ts";
export { commonStep, latticeLengths, latticeStep, shortenedByGap } from "./lattice.ts";
export { kitGeometry, kitLength, type KitGeometry } from "./geometry.ts";
export {
  boardPattern,
  clearWidth,
  deckBoards,
  deckThickness,
  sheetWidth,
  type BoardPattern,
} from "./deck.ts";
export { crossPlaces, type CrossPlace } from "./cross-places.ts";
export { moduleStringers, platformStringers, type StringerLines } from "./frame.ts";
export { modulePieces } from "./module-pieces.ts";
export { platformHalves, platformPieces, type PlatformEdge } from "./platform-pieces.ts";
export { rampKit, rampPieces, rampRise } from "./ramp-pieces.ts";
export { isPanelDeck, PANEL_KINDS, panelItem } from "./panels.ts";
export { moduleScrews, platformScrews, type ScrewPoint } from "./screw-points.ts";
export { moduleOpenShare, platformOpenShare, type OpenShare } from "./open-share.ts";
export { engineerBecause } from "./engineer.ts";
export { pileDepth, shaftArea } from "./base-pieces.ts";
export {
  moduleDrawing,
  platformDrawing,
  rampDrawing,
  supportDrawing,
  type DimensionChain,
  type DrawnPiece,
  type PartDrawing,
} from "./drawing.ts";
export { underPlatformEdge } from "./edge-sill.ts";
export { supportKind, supportPieces } from "./support-pieces.ts";
export { hasBase, supportHeights, supportStack, type SupportStack } from "./support-tiers.ts";
export {
  meshPanelItem,
  moduleCounts,
  platformCounts,
  rampCounts,
  supportCounts,
  type Counted,
} from "./counts.ts";
export {
  frameFromJoint,
  pieceCorners,
  supportFrame,
  toSite,
  type JointPlace,
  type PartFrame,
  type SitePoint,
} from "./placement.ts";
export { fastenerChoices, preservativeChoices, type MaterialChoice } from "./material-choices.ts";
export { fastenersOf } from "./preservative-faults.ts";
export { validateKit } from "./validate.ts";
export { cartProblems, type CartTrack } from "./cart-problems.ts";
export type { KitTables } from "./faults.ts";
export { readKit } from "./kit-shape.ts";
export { kitCalculations } from "./calculations.ts";
