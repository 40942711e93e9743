import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Crs } from "@causey/engine/site";
import { placeLayer, type PlaceOptions, type PlacedLayer, type VectorLayer } from "@causey/io/layers";
import { useEffect, useState } from "react";

export interface Placing {
  readonly layer: PlacedLayer | null;
  readonly problems: readonly Problem[];
}

interface Told extends Placing {
  readonly of: string;
  readonly from: VectorLayer;
}

/**
 * A layer in the site's grid, once it is known in which system it is (`assume`; "declared" = the file says it).
 * Null while that is open or being worked out.
 */
export function usePlacedLayer(
  layer: VectorLayer | null,
  crs: Crs | null,
  assume: PlaceOptions["assume"] | "declared" | null,
): Placing | null {
  const [told, setTold] = useState<Told | null>(null);
  const of = JSON.stringify([assume ?? null, crs]);

  useEffect(() => {
    if (layer === null || crs === null || assume === null || assume === undefined) return undefined;
    let isCurrent = true;
    void place(layer, crs, assume).then((placing) => {
      if (isCurrent) setTold({ ...placing, of, from: layer });
    });
    return () => {
      isCurrent = false;
    };
    // `of` stands for `assume` and `crs` by their values: each drawing of the dialog makes them anew.
    // oxlint-disable-next-line react/exhaustive-deps
  }, [layer, of]);

  return told !== null && told.from === layer && told.of === of ? told : null;
}

async function place(
  layer: VectorLayer,
  crs: Crs,
  assume: NonNullable<PlaceOptions["assume"]> | "declared",
): Promise<Placing> {
  try {
    const placed = await placeLayer(layer, crs, assume === "declared" ? {} : { assume });
    return { layer: placed.layer, problems: placed.warnings };
  } catch (error) {
    if (error instanceof ProblemError) return { layer: null, problems: error.problems };
    throw error;
  }
}
