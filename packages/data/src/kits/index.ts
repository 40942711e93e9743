import type { Kit } from "@causey/engine/kit";
import { fenPanels } from "./fen-panels.ts";
import { lightMesh } from "./light-mesh.ts";
import { meadowBoards } from "./meadow-boards.ts";
import { saltGrating } from "./salt-grating.ts";

/** Kits that can be used as they stand; a plan holds its own copy and may change it. */
export const readyKits: readonly Kit[] = [meadowBoards, lightMesh, saltGrating, fenPanels];

/** The ready kit with this id; undefined when there is none. */
export const readyKit = (id: string): Kit | undefined => readyKits.find((kit) => kit.id === id);
